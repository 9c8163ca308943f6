import { type Extremes, findExtremes } from '#domain/numbers/extremes.ts'
import { firstWhere } from '#domain/numbers/risingSearch.ts'

/** Where thinned points are put; kept between frames so that drawing allocates nothing. */
export type ThinnedPoints = { timeS: Float64Array; force: Float64Array; length: number }

/** Room for the thinned points of `columns` columns of pixels. */
export function createThinnedPoints(columns: number): ThinnedPoints {
  const room = 2 * (columns + 2)
  return { timeS: new Float64Array(room), force: new Float64Array(room), length: 0 }
}

/** Samples by index, as a ring buffer or a pair of arrays gives them. */
export type IndexedSamples = {
  readonly length: number
  timeAt(index: number): number
  forceAt(index: number): number
}

/**
 * Thins samples to the lowest and the highest of each column of `columnS` seconds, in the order in which they came, so that
 * no peak is lost from view. Columns start at whole multiples of `columnS`: a scrolling view then keeps the same points and
 * does not shimmer. Stops when `out` is full. Where a column holds one or two samples, they pass unchanged.
 */
export function thinByMinimumAndMaximum(
  samples: IndexedSamples,
  from: number,
  to: number,
  columnS: number,
  out: ThinnedPoints,
): void {
  if (!(columnS > 0)) throw new RangeError('thinByMinimumAndMaximum requires columns wider than 0 s')
  out.length = 0
  const found: Extremes = { first: 0, second: 0 }
  const columnOf = (index: number) => Math.floor(samples.timeAt(index) / columnS)
  const keep = (index: number) => {
    out.timeS[out.length] = samples.timeAt(index)
    out.force[out.length++] = samples.forceAt(index)
  }
  for (let i = from; i < to && out.length + 2 <= out.timeS.length; ) {
    const column = columnOf(i)
    const end = firstWhere(i + 1, to, (index) => columnOf(index) !== column)
    findExtremes(samples.forceAt, i, end, found)
    keep(found.first)
    if (found.second !== found.first) keep(found.second)
    i = end
  }
}
