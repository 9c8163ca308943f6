import { lastAtOrBefore } from '../../numbers/risingSearch.ts'
import type { Stretch } from '../stream/stretches.ts'
import type { CurveAxes } from './curveAxes.ts'
import type { LoadedPart } from './loadedPart.ts'

/**
 * A curve at the places of a grid, on its axes: the straight line between the two samples beside each place; NaN outside
 * its loaded part, before its first and after its last sample, and within gaps.
 *
 *   y(x) = force(originS + x timeUnit) / forceUnit
 *
 * Not the mean of the samples about a place: a mean would lower the peak and begin the drop early, and a curve aligned at
 * its peak has at 0 just that peak. What lies between two places is drawn from the curve itself, not from the grid.
 * `forceAt` gives the force of a sample by its index, asked for beside each place only. The grid must rise.
 * Checked: tests/domain/signal/compare/curveOnGrid.spec.ts against numpy.interp.
 */
export function curveOnGrid(
  timeS: Float64Array,
  forceAt: (index: number) => number,
  stretches: readonly Stretch[],
  axes: CurveAxes,
  loaded: LoadedPart,
  grid: Float64Array,
): Float64Array {
  const { originS, timeUnit, forceUnit } = axes
  const values = new Float64Array(grid.length).fill(Number.NaN)
  let place = 0
  for (const { from, to } of stretches) {
    const fromS = Math.max(timeS[from]!, loaded.fromS)
    const toS = Math.min(timeS[to - 1]!, loaded.toS)
    while (place < grid.length && originS + grid[place]! * timeUnit < fromS) place += 1
    let at = from
    for (; place < grid.length; place++) {
      const wantedS = originS + grid[place]! * timeUnit
      if (wantedS > toS) break
      at = lastAtOrBefore(timeS, wantedS, at, to)
      values[place] = between(timeS, forceAt, at, wantedS) / forceUnit
    }
  }
  return values
}

function between(timeS: Float64Array, forceAt: (index: number) => number, at: number, wantedS: number): number {
  const left = forceAt(at)
  const past = wantedS - timeS[at]!
  if (past === 0) return left
  return left + ((forceAt(at + 1) - left) * past) / (timeS[at + 1]! - timeS[at]!)
}
