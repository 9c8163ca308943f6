/** The straight line through points whose positions rise, at a position; null beyond the ends and where a point is NaN. */
export function between(positions: Float64Array, values: Float64Array, at: number): number | null {
  let low = 0
  let high = positions.length - 1
  if (high < 0 || !(at >= positions[0]!) || !(at <= positions[high]!)) return null
  while (high - low > 1) {
    const middle = (low + high) >>> 1
    if (positions[middle]! <= at) low = middle
    else high = middle
  }
  const [x0, x1] = [positions[low]!, positions[high]!]
  const share = x1 > x0 ? (at - x0) / (x1 - x0) : 0
  // On a point itself its neighbour does not matter, which may be NaN.
  const value =
    share === 0 ? values[low]! : share === 1 ? values[high]! : values[low]! + share * (values[high]! - values[low]!)
  return Number.isNaN(value) ? null : value
}
