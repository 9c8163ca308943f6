import type { Calibration } from '#contract/calibration/calibration.ts'
import { polynomialAt, polynomialSlope } from '../fit/polynomial.ts'

/** What two calibrations are compared by. */
export type DriftFigures = { readonly slopeN: number; readonly zeroReading: number }

/** The reading at which the curve gives no force, by Newton's steps from a reading near it, as long as they bring it nearer. */
function zeroOfCurve(coefficients: readonly number[], from: number): number {
  const distance = (reading: number) => Math.abs(polynomialAt(coefficients, reading))
  let reading = from
  let next = from
  do {
    reading = next
    next = reading - polynomialAt(coefficients, reading) / polynomialSlope(coefficients, reading)
  } while (distance(next) < distance(reading))
  return reading
}

/**
 * Mean slope from the zero point to the highest force applied, N per unit of the reading, and the reading without load.
 *
 *   slope = ( F(r_high) − F(r_0) ) / ( r_high − r_0 )      r_0 mean reading at zero load going up; else where the curve is 0
 *
 * Throws RangeError when highest and zero reading are the same.
 * Source: definition. Checked: tests/domain/calibration/control/calibrationDrift.spec.ts.
 */
export function driftFigures({ rows, assessment }: Pick<Calibration, 'rows' | 'assessment'>): DriftFigures {
  const { coefficients } = assessment.result
  const highestN = Math.max(...rows.map((row) => row.forceN))
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const readingsAt = (forceN: number) =>
    rows.filter((row) => row.forceN === forceN && row.direction === 'up').map((row) => row.reading)
  const highReading = mean(readingsAt(highestN))
  const zeros = readingsAt(0)
  const zeroReading =
    zeros.length > 0
      ? mean(zeros)
      : zeroOfCurve(coefficients, rows.reduce((low, row) => (row.forceN < low.forceN ? row : low)).reading)
  if (!(Math.abs(highReading - zeroReading) > 0))
    throw new RangeError('driftFigures requires a highest reading that is not the zero reading')
  const forceOf = (reading: number) => polynomialAt(coefficients, reading)
  return { slopeN: (forceOf(highReading) - forceOf(zeroReading)) / (highReading - zeroReading), zeroReading }
}

/**
 * Change of slope in percent of the older one, and of the zero in N by the newer slope.
 *
 *   Δslope = 100 (s₂ − s₁) / s₁      Δzero = (r₂ − r₁) s₂
 *
 * Source: arithmetic. Checked: tests/domain/calibration/control/calibrationDrift.spec.ts.
 */
export function driftBetween(
  older: DriftFigures,
  newer: DriftFigures,
): { slopeChangePercent: number; zeroChangeN: number } {
  return {
    slopeChangePercent: (100 * (newer.slopeN - older.slopeN)) / older.slopeN,
    zeroChangeN: (newer.zeroReading - older.zeroReading) * newer.slopeN,
  }
}
