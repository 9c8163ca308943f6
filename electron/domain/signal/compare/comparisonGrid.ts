/** From where to where a curve reaches on the common axis. */
export type Extent = { from: number; to: number }

/** Fewest curves that have a median worth drawing. */
const leastForMedian = 3

/**
 * How many of so many curves must reach a place for them to have a median there: half of them, and three at least. Where
 * fewer are left, it is those that were loaded slowly or quickly, and their median is not that of the group.
 *
 *   max(3, ⌈n / 2⌉)
 *
 * Common practice, no source. Checked: tests/domain/signal/compare/comparisonGrid.spec.ts by hand.
 */
export function leastReaching(curves: number): number {
  return Math.max(leastForMedian, Math.ceil(curves / 2))
}
/** Steps of a grid: a pixel or less each on any screen. */
const steps = 4000

/**
 * The places at which several curves are compared: 4000 equal steps over the part that enough of them reach for a median
 * (all that any reaches where there are fewer than three), so laid that 0, where they are aligned, is one of them to the last bit.
 *
 * Empty where there is no curve or none reaches anywhere. Throws RangeError for an extent that is not finite.
 * Checked: tests/domain/signal/compare/comparisonGrid.spec.ts.
 */
export function comparisonGrid(extents: readonly Extent[]): Float64Array<ArrayBuffer> {
  if (extents.some(({ from, to }) => !Number.isFinite(from) || !Number.isFinite(to)))
    throw new RangeError('comparisonGrid requires finite extents')
  const nth = extents.length >= leastForMedian ? leastReaching(extents.length) - 1 : 0
  const from = extents.map((extent) => extent.from).sort((a, b) => a - b)[nth]
  const to = extents.map((extent) => extent.to).sort((a, b) => b - a)[nth]
  if (from === undefined || to === undefined || !(to > from)) return new Float64Array(0)
  const step = (to - from) / steps
  const first = Math.ceil(from / step)
  const last = Math.floor(to / step)
  // Adding 0 makes minus zero zero.
  return Float64Array.from({ length: last - first + 1 }, (_, k) => (first + k) * step + 0)
}
