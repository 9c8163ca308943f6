import type { ComparedCurve, Comparison } from '#contract/breaks/comparison.ts'
import type { OverruledPeak } from '#contract/breaks/decision.ts'
import { besideOthers } from '#domain/signal/compare/besideOthers.ts'
import type { Quantities } from '../../units/quantities.ts'

/** What is told of a curve among others; its peak in N, its time from onset to peak. */
export type UnlikeRow = {
  breakId: number
  curve: Pick<ComparedCurve, 'setAside'>
  peakN: number | null
  timeToPeakS: number | null
  overruled: OverruledPeak | null
}

/**
 * In what else an outlying curve is unlike the others, in sentences: how fast its load rose (peak over time to peak), and its
 * peak, each beside the median of the same figure of the others and only where the axes let it matter; and that its peak is a
 * person's word. None of them is called the cause.
 */
export function unlikeWords(
  row: UnlikeRow,
  rows: readonly UnlikeRow[],
  { unit, timeUnit }: Pick<Comparison, 'unit' | 'timeUnit'>,
  { force }: Quantities,
): string {
  const others = rows.filter(({ breakId, curve }) => breakId !== row.breakId && !curve.setAside)
  const sentences: string[] = []
  const rate = timeUnit === '%' ? null : besideOthers(meanRateNPerS(row), others.map(meanRateNPerS))
  if (rate !== null) {
    const how = rate.own < rate.usual ? 'more slowly' : 'faster'
    const [own, usual] = [rate.own, rate.usual].map((value) => `${force.text(value)}/s`)
    sentences.push(`Its load rose ${how}: ${own} on average up to its peak, the others’ median ${usual}.`)
  }
  const peak =
    unit === '%'
      ? null
      : besideOthers(
          row.peakN,
          others.map(({ peakN }) => peakN),
        )
  if (peak !== null) {
    const which = peak.own < peak.usual ? 'lower' : 'higher'
    sentences.push(`Its peak is ${which}: ${force.text(peak.own)}, the others’ median ${force.text(peak.usual)}.`)
  }
  if (row.overruled !== null) sentences.push('Its peak was set by hand.')
  return sentences.join(' ')
}

function meanRateNPerS({ peakN, timeToPeakS }: UnlikeRow): number | null {
  return peakN === null || timeToPeakS === null || !(timeToPeakS > 0) ? null : peakN / timeToPeakS
}
