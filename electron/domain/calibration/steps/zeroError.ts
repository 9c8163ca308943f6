import type { CalibrationRow } from '#contract/calibration/reading.ts'

type IndicatedRow = Pick<CalibrationRow, 'run' | 'direction' | 'forceN'> & { readonly indicatedN: number }

/**
 * Force left over at zero after unloading, N; of several runs the one largest in size, null where no run has both zeros.
 *
 *   F_i0 = indicated at zero after the run − indicated at zero before it
 *
 * Before: a zero point going up; after: one going down.
 * Source: ISO 7500-1 (from memory). Checked: tests/domain/calibration/steps/zeroError.spec.ts.
 */
export function zeroErrorN(rows: readonly IndicatedRow[]): number | null {
  let largest: number | null = null
  for (const run of Map.groupBy(
    rows.filter((row) => row.forceN === 0),
    (row) => row.run,
  ).values()) {
    const before = run.find((row) => row.direction === 'up')
    const after = run.findLast((row) => row.direction === 'down')
    if (before === undefined || after === undefined) continue
    const error = after.indicatedN - before.indicatedN
    if (largest === null || Math.abs(error) > Math.abs(largest)) largest = error
  }
  return largest
}
