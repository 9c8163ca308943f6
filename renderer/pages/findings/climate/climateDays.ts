import type { PullToCome, StoreClimate, StoredSeries } from '#contract/findings/climateAnswers.ts'
import type { DayMark } from '#figures/findings/climate/climatePanel.ts'
import { ageInWords } from '#words/breaks/groupName.ts'

/** The pulls to come of the blocks that are shown; of every series of the store where none is. */
export function toComeOf(toCome: readonly PullToCome[], series: Pick<StoredSeries, 'key'> | null): PullToCome[] {
  const own = toCome.filter((pull) => series === null || pull.series === series.key)
  return own.filter(
    ({ dueS, ageMonths }, i) => own.findIndex((one) => one.dueS === dueS && one.ageMonths === ageMonths) === i,
  )
}

/**
 * The days that are marked and the time that is shown: from the first of readings, glue-up and breaks to the last of them, and
 * beyond to the pulls to come within half as much time again, so that those of thirty years do not press what was read into a corner.
 */
export function climateDays(
  climate: Pick<StoreClimate, 'fromS' | 'toS'>,
  series: Pick<StoredSeries, 'gluedS' | 'ages'> | null,
  toCome: readonly PullToCome[],
): { days: DayMark[]; axis: { fromS: number; toS: number } } {
  const past: DayMark[] = [
    ...(series === null || series.gluedS === null ? [] : [{ timeS: series.gluedS, name: 'first block glued' }]),
    ...(series?.ages ?? []).map(({ ageMonths, brokenS }) => ({
      timeS: brokenS,
      name: `blocks ${ageInWords(ageMonths)} broken`,
    })),
  ]
  const fromS = Math.min(climate.fromS, ...past.map(({ timeS }) => timeS))
  const untilS = Math.max(climate.toS, ...past.map(({ timeS }) => timeS))
  const ahead = toCome
    .filter(({ dueS }) => dueS <= untilS + (untilS - fromS) / 2)
    .map(({ dueS, ageMonths }) => ({ timeS: dueS, name: `pull of blocks ${ageInWords(ageMonths)}`, isToCome: true }))
  return { days: [...past, ...ahead], axis: { fromS, toS: Math.max(untilS, ...ahead.map(({ timeS }) => timeS)) } }
}
