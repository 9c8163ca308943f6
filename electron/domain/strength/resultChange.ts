import type { CurveEvent, Flag, Outcome } from '#contract/breaks/evaluation.ts'
import type { ChangesPage, ResultChange } from '#contract/reevaluation/changes.ts'

/** Two peaks that differ by no more than this share differ by the order of the arithmetic. */
const samePeakShare = 1e-9

/** A result as far as it is compared with another of the same break. */
export type ComparedResult = {
  readonly evaluationId: number
  readonly method: string
  readonly outcome: Outcome
  readonly peakN: number | null
  readonly flags: readonly Flag[]
  readonly events: readonly CurveEvent[]
}

/** Two results of a break beside each other, and how they differ. */
export type ResultPair = Pick<ResultChange, 'before' | 'now' | 'differenceN' | 'differencePercent' | 'changed'>

/**
 * How the result of a break differs from the one before.
 *
 *   d = F_now − F_before      in N, and in percent of F_before; null where either has no peak
 *
 * A peak counts as changed beyond 1e-9 of the larger of the two; the order of flags says nothing, that of events does.
 * Checked: tests/domain/strength/resultChange.spec.ts.
 */
export function resultPair(was: ComparedResult, is: ComparedResult): ResultPair {
  const before = sideOf(was)
  const now = sideOf(is)
  const differenceN = before.peakN === null || now.peakN === null ? null : now.peakN - before.peakN
  return {
    before,
    now,
    differenceN,
    differencePercent: differenceN === null || !before.peakN ? null : (100 * differenceN) / before.peakN,
    changed: {
      outcome: before.outcome !== now.outcome,
      peak:
        differenceN === null
          ? before.peakN !== now.peakN
          : Math.abs(differenceN) > samePeakShare * Math.max(Math.abs(before.peakN!), Math.abs(now.peakN!)),
      flags: before.flags.toSorted().join() !== now.flags.toSorted().join(),
      events: before.events.join() !== now.events.join(),
    },
  }
}

function sideOf({ flags, events, ...result }: ComparedResult): ResultPair['before'] {
  return { ...result, flags: [...flags], events: eventNames(events) }
}

function eventNames(events: readonly CurveEvent[]): string[] {
  return events
    .toSorted((a, b) => a.startTimeS - b.startTimeS)
    .map(({ kind, cycles }) => (kind === 'stick-slip' && cycles !== null ? `${kind} ${cycles}` : kind))
}

/** How many results changed in what, and by how much their peaks did; differences of peaks that did not change are left out. */
export function changeFigures(changes: readonly ResultChange[]): ChangesPage['figures'] {
  const count = (which: keyof ResultChange['changed']) => changes.filter(({ changed }) => changed[which]).length
  const percents = changes
    .filter(({ changed }) => changed.peak)
    .map(({ differencePercent }) => differencePercent)
    .filter((percent) => percent !== null)
  const largest = percents.reduce((found, percent) => (Math.abs(percent) > Math.abs(found) ? percent : found), 0)
  return {
    results: changes.length,
    outcomes: count('outcome'),
    peaks: count('peak'),
    flags: count('flags'),
    events: count('events'),
    overruled: changes.filter(({ overruled }) => overruled !== null).length,
    setAside: changes.filter(({ setAside }) => setAside !== null).length,
    meanDifferencePercent:
      percents.length === 0 ? null : percents.reduce((sum, percent) => sum + percent, 0) / percents.length,
    largestDifferencePercent: percents.length === 0 ? null : largest,
  }
}
