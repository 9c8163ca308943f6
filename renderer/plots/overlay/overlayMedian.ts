import { buildLevels, type MinMaxLevels } from '../minMaxLevels.ts'
import type { OverlayMedian } from './overlayCurve.ts'

/** Median and quartiles ready to be drawn: each line in stretches without a gap. */
export type DrawnMedian = Record<'median' | 'lower' | 'upper', MinMaxLevels[]>

/** Cuts the lines where there is no median. */
export function drawnMedian({ grid, median, lower, upper }: OverlayMedian): DrawnMedian {
  return { median: unbroken(grid, median), lower: unbroken(grid, lower), upper: unbroken(grid, upper) }
}

function unbroken(grid: Float64Array, values: Float64Array): MinMaxLevels[] {
  const stretches: MinMaxLevels[] = []
  let from = 0
  for (let i = 0; i <= values.length; i++) {
    if (i < values.length && !Number.isNaN(values[i]!)) continue
    if (i > from) stretches.push(buildLevels(grid.subarray(from, i), values.subarray(from, i)))
    from = i + 1
  }
  return stretches
}
