/** Index of the sample nearest in time, also beyond the ends; −1 where there are no samples. Times rise. */
export function nearestIndex(timeS: Float64Array, atS: number): number {
  if (timeS.length === 0) return -1
  let low = 0
  let high = timeS.length - 1
  while (high - low > 1) {
    const middle = (low + high) >>> 1
    if (timeS[middle]! <= atS) low = middle
    else high = middle
  }
  return Math.abs(timeS[low]! - atS) <= Math.abs(timeS[high]! - atS) ? low : high
}

/** A curve's own value nearest to a time, so that a mark stands on the line; 0 for a curve without samples. */
export function forceNear(timeS: Float64Array, force: Float64Array, atS: number): number {
  return force[nearestIndex(timeS, atS)] ?? 0
}
