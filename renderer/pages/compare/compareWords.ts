import type { ComparedCurve, Comparison } from '#contract/records/curveViews.ts'
import { between } from '#renderer/plots/overlayCurve.ts'
import { type Quantities, writeFixed } from '#renderer/widgets/quantities.ts'

/** Below this share of the highest median a percentage of it says nothing: the load is near zero there. */
const leastShareForPercent = 0.02

/** What a curve is called where it is pointed out. */
export function curveName(
  { number, breakId }: Pick<ComparedCurve, 'number' | 'breakId'>,
  among: readonly ComparedCurve[],
) {
  if (number === null) return `break ${breakId}`
  const same = among.filter((other) => other.number === number).length
  return same > 1 ? `${number} (break ${breakId})` : number
}

/** "lies 18 % below the group's median at 4.2 s"; empty for a curve that is none of the outlying. */
export function outlyingWords(curve: ComparedCurve, comparison: Comparison, quantities: Quantities): string {
  if (curve.outlying === null) return ''
  return `lies ${differenceWords(curve.outlying, comparison, quantities)} the group’s median at ${placeWords(curve.outlying.at, comparison.timeUnit)}`
}

/** "18 % below", for a mark in the plot; a share of the median, or the amount where the median is near zero. */
export function differenceWords(
  { at, difference }: NonNullable<ComparedCurve['outlying']>,
  { grid, median, unit }: Pick<Comparison, 'grid' | 'median' | 'unit'>,
  { force }: Quantities,
): string {
  const side = difference < 0 ? 'below' : 'above'
  const size = Math.abs(difference)
  const there = between(grid, median, at)
  let highest = 0
  for (const value of median) if (value > highest) highest = value
  if (unit === '%') return `${writeFixed(size, size < 10 ? 1 : 0)} points (% of peak) ${side}`
  if (there !== null && there > leastShareForPercent * highest) {
    const percent = (100 * size) / there
    return `${writeFixed(percent, percent < 10 ? 1 : 0)} % ${side}`
  }
  return `${unit === 'N' ? force.text(size) : `${writeFixed(size, 0)} counts`} ${side}`
}

/** A place of the time axis: "4.2 s", or "63 % of the time to peak". */
export function placeWords(at: number, timeUnit: Comparison['timeUnit']): string {
  if (timeUnit === '%') return `${writeFixed(at, 0)} % of the time to peak`
  const size = Math.abs(at)
  return `${writeFixed(at, size < 1 ? 3 : size < 10 ? 2 : 1)} s`
}

/** What median and band stand for, or why there are none. */
export function medianWords(curves: number): string {
  if (curves >= 3) return ''
  return curves === 1
    ? 'One curve has no median. With three or more, their median and quartiles are drawn.'
    : 'Two curves have no median worth the name. With three or more, their median and quartiles are drawn.'
}

/** How many of the curves are pointed out, and how that is meant. */
export function hintWords({ curves, notJudged }: Pick<Comparison, 'curves' | 'notJudged'>): string {
  if (notJudged !== null) return notJudged
  const count = curves.filter(({ outlying }) => outlying !== null).length
  if (count === 0) return 'No curve stands out from the others. That is no proof that all are sound.'
  const which = count === 1 ? 'One curve stands' : `${count} curves stand`
  return `${which} out from the others: a hint to look at ${count === 1 ? 'it' : 'them'}, not a verdict. Nothing is left out of any result because of it.`
}
