import { between } from '#domain/numbers/between.ts'
import { firstAtOrAfter } from '#domain/numbers/risingSearch.ts'
import { type OverlayCurve, type OverlayMedian, valueAt } from './overlayCurve.ts'

/**
 * What the plot has at a place of its time axis, in stored units: the curve that stands out, and the median with the number of
 * curves that it is one of there. null where there is none.
 */
export type OverlayReading = { at: number; force: number | null; median: { value: number; of: number } | null }

/** Reads curve and median at a place of the time axis. */
export function readingAt(curve: OverlayCurve | null, median: OverlayMedian | null, at: number): OverlayReading {
  const value = median === null ? null : between(median.grid, median.median, at)
  return {
    at,
    force: curve === null ? null : valueAt(curve, at),
    median: median === null || value === null ? null : { value, of: countAt(median, at) },
  }
}

/** The count at the place of the grid at or before a position. */
function countAt({ grid, curvesAt }: OverlayMedian, at: number): number {
  const after = firstAtOrAfter(grid, at)
  return curvesAt[grid[after] === at ? after : Math.max(after - 1, 0)] ?? 0
}
