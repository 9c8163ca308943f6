import { lastAtOrBefore } from './risingSearch.ts'

/** The straight line through points whose positions rise, at a position; null beyond the ends and where a point is NaN. */
export function between(positions: Float64Array, values: Float64Array, at: number): number | null {
  const last = positions.length - 1
  if (last < 0 || !(at >= positions[0]!) || !(at <= positions[last]!)) return null
  const low = lastAtOrBefore(positions, at, 0, last)
  const high = Math.min(low + 1, last)
  const [x0, x1] = [positions[low]!, positions[high]!]
  const share = x1 > x0 ? (at - x0) / (x1 - x0) : 0
  // On a point itself its neighbour does not matter, which may be NaN.
  const value =
    share === 0 ? values[low]! : share === 1 ? values[high]! : values[low]! + share * (values[high]! - values[low]!)
  return Number.isNaN(value) ? null : value
}
