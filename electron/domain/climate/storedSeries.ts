import type { StoredSeries } from '#contract/findings/climateAnswers.ts'
import { groupSummary, usualTerms } from '../findings/groupSummary.ts'
import { asObserved, cellsOf } from '../findings/observation.ts'
import { type ObservedBreak, observedBreaks } from '../findings/observedBreak.ts'
import { dayOf } from '../programme/calendar/calendarDay.ts'
import { traitsKey } from '../programme/study/plannedAges.ts'

const secondsPerDay = 86_400

/**
 * The series of blocks that lay in a store: at each age the mean strength as observed with its 95 % interval (MPa), and the day in
 * the middle of those on which they were broken. Blocks that are left out count for nothing.
 * Checked: tests/domain/climate/storedSeries.spec.ts.
 */
export function storedSeries(breaks: readonly ObservedBreak[]): StoredSeries[] {
  const observations = observedBreaks(breaks, traitsKey)
  const from = new Map(observations.map((one, i) => [one, breaks[i]!]))
  const series = new Map<string, StoredSeries>()
  for (const cell of cellsOf(observations)) {
    if (cell.counted.length === 0) continue
    const broken = cell.counted.map((one) => from.get(one)!)
    const { n, meanMPa, meanLowMPa, meanHighMPa } = groupSummary(cell, asObserved, usualTerms)
    const { adhesive, jointType, bondLineGapMm, exposure } = broken[0]!
    const known = series.get(cell.group)
    const glued = broken.flatMap(({ gluedOn }) => (gluedOn === null ? [] : [dayOf(gluedOn) * secondsPerDay]))
    const before = known?.gluedS ?? null
    const days = [...(before === null ? [] : [before]), ...glued]
    const times = broken.map(({ startedAt }) => Math.floor(Date.parse(startedAt) / 1000)).sort((a, b) => a - b)
    series.set(cell.group, {
      ...{ key: cell.group, adhesive, jointType, bondLineGapMm, exposure },
      gluedS: days.length === 0 ? null : Math.min(...days),
      simulated: (known?.simulated ?? false) || broken.some(({ simulated }) => simulated),
      ages: [
        ...(known?.ages ?? []),
        {
          ...{ ageMonths: cell.ageMonths, brokenS: times[times.length >> 1]!, n },
          ...{ meanMPa, lowMPa: meanLowMPa, highMPa: meanHighMPa },
        },
      ],
    })
  }
  return [...series.values()]
}
