/** How far a curve lies from another, and where farthest. */
export type CurveDistance = { rootMeanSquare: number; farthest: { at: number; difference: number } }

/**
 * Distance of a curve from the median curve, in units of the force axis; null where they have no place in common.
 *
 *   sqrt( Σ (yₖ − mₖ)² / K )      over the K places of the grid where both are known (not NaN)
 *   farthest: the first place where |y − m| is largest, with y − m there
 *
 * Checked: tests/domain/signal/compare/curveDistance.spec.ts against numpy.
 */
export function curveDistance(curve: Float64Array, median: Float64Array, grid: Float64Array): CurveDistance | null {
  let squares = 0
  let count = 0
  let farthest: CurveDistance['farthest'] | null = null
  for (let place = 0; place < grid.length; place++) {
    const difference = curve[place]! - median[place]!
    if (Number.isNaN(difference)) continue
    if (farthest === null || Math.abs(difference) > Math.abs(farthest.difference))
      farthest = { at: grid[place]!, difference }
    squares += difference * difference
    count += 1
  }
  return farthest === null ? null : { rootMeanSquare: Math.sqrt(squares / count), farthest }
}
