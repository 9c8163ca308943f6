/** One stretch of a rule: every so many months until an age, counted from the end of the stretch before. */
export type AgeStretch = { everyMonths: number; untilMonths: number }

/** "At once, then every six months for three years, then yearly to thirty", as an example of a rule. */
export const halfYearlyThenYearly: { atOnce: boolean; stretches: readonly AgeStretch[] } = {
  atOnce: true,
  stretches: [
    { everyMonths: 6, untilMonths: 36 },
    { everyMonths: 12, untilMonths: 360 },
  ],
}

/**
 * Ages in months that a rule asks for, rising, each once; the end of a stretch is an age where its steps meet it. `atOnce`: the
 * age of 0 is the first. Throws RangeError for a step that is no whole month or a stretch that ends before it begins.
 */
export function agesByRule({ atOnce, stretches }: { atOnce: boolean; stretches: readonly AgeStretch[] }): number[] {
  const ages = atOnce ? [0] : []
  let from = 0
  for (const { everyMonths, untilMonths } of stretches) {
    if (!Number.isInteger(everyMonths) || everyMonths < 1 || !Number.isInteger(untilMonths) || untilMonths <= from)
      throw new RangeError(
        `agesByRule requires steps of whole months and later ends, not ${everyMonths} to ${untilMonths}`,
      )
    for (let age = from + everyMonths; age <= untilMonths; age += everyMonths) ages.push(age)
    from = untilMonths
  }
  return ages
}
