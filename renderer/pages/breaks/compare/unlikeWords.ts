import type { Comparison } from '#contract/breaks/comparison.ts'
import type { Quantities } from '#words/units/quantities.ts'
import type { CompareRow } from './compareRows.ts'

/** A figure that differs by more than this from the median of the others is told. */
const toldFrom = 0.2
/** Among fewer others there is no saying what is usual. */
const fewestOthers = 4

/**
 * In what else an outlying curve is unlike the others, in sentences: how fast its load rose (peak over time to peak), and its
 * peak, each beside the median of the same figure of the others and only where the axes let it matter; and that its peak is a
 * person's word. None of them is called the cause.
 */
export function unlikeWords(
  row: CompareRow,
  rows: readonly CompareRow[],
  { unit, timeUnit }: Pick<Comparison, 'unit' | 'timeUnit'>,
  { force }: Quantities,
): string {
  const others = rows.filter(({ breakId, curve }) => breakId !== row.breakId && !curve.setAside)
  const sentences: string[] = []
  const rate = timeUnit === '%' ? null : besideOthers(row, others, meanRateNPerS)
  if (rate !== null) {
    const how = rate.own < rate.usual ? 'more slowly' : 'faster'
    const [own, usual] = [rate.own, rate.usual].map((value) => `${force.text(value)}/s`)
    sentences.push(`Its load rose ${how}: ${own} on average up to its peak, the others’ median ${usual}.`)
  }
  const peak = unit === '%' ? null : besideOthers(row, others, ({ peakN }) => peakN)
  if (peak !== null) {
    const which = peak.own < peak.usual ? 'lower' : 'higher'
    sentences.push(`Its peak is ${which}: ${force.text(peak.own)}, the others’ median ${force.text(peak.usual)}.`)
  }
  if (row.overruled !== null) sentences.push('Its peak stands by a person’s word.')
  return sentences.join(' ')
}

function meanRateNPerS({ peakN, timeToPeakS }: CompareRow): number | null {
  return peakN === null || timeToPeakS === null || !(timeToPeakS > 0) ? null : peakN / timeToPeakS
}

/** A figure and the usual one of the others, when it is far from that. */
function besideOthers(
  row: CompareRow,
  others: readonly CompareRow[],
  figure: (row: CompareRow) => number | null,
): { own: number; usual: number } | null {
  const own = figure(row)
  const known = others.map(figure).filter((value) => value !== null)
  if (own === null || known.length < fewestOthers) return null
  const sorted = known.sort((a, b) => a - b)
  const usual = (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2
  return Math.abs(own - usual) > toldFrom * usual ? { own, usual } : null
}
