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
  let i = from
  while (i < to && out.length + 2 <= out.timeS.length) {
    const column = Math.floor(samples.timeAt(i) / columnS)
    let lowest = i
    let highest = i
    let lowestForce = samples.forceAt(i)
    let highestForce = lowestForce
    i++
    while (i < to && Math.floor(samples.timeAt(i) / columnS) === column) {
      const force = samples.forceAt(i)
      if (force < lowestForce) {
        lowest = i
        lowestForce = force
      }
      if (force > highestForce) {
        highest = i
        highestForce = force
      }
      i++
    }
    const first = Math.min(lowest, highest)
    const second = Math.max(lowest, highest)
    out.timeS[out.length] = samples.timeAt(first)
    out.force[out.length++] = samples.forceAt(first)
    if (second !== first) {
      out.timeS[out.length] = samples.timeAt(second)
      out.force[out.length++] = samples.forceAt(second)
    }
  }
}
