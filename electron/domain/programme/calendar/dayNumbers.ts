/** A glue-up: the day that was entered first, and the one that is in force. */
export type GlueUpDays = { glueUpId: number; firstOn: string; gluedOn: string }

/** No study has so many days of glue-up. */
const beyondPlaces = 10_000

/**
 * A number for each day of glue-up of a study, by which calendars know its pulls: the place that the day first entered of its lowest
 * glue-up had among the days first entered, whatever was corrected since. Where two days come from one, the lower glue-up keeps the
 * place. `glueUps` are in the order in which they were recorded.
 */
export function dayNumbers(glueUps: readonly GlueUpDays[]): Map<string, number> {
  const places = [...new Set(glueUps.map(({ firstOn }) => firstOn))]
  const numbers = new Map<string, number>()
  const taken = new Set<number>()
  for (const { glueUpId, firstOn, gluedOn } of glueUps) {
    if (numbers.has(gluedOn)) continue
    const place = places.indexOf(firstOn)
    numbers.set(gluedOn, taken.has(place) ? beyondPlaces + glueUpId : place)
    taken.add(place)
  }
  return numbers
}
