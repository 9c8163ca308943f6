import type { Calibration } from '#contract/calibration/calibration.ts'

/** What two calibrations are compared by. */
export type DriftFigures = { readonly slopeN: number; readonly zeroReading: number }

/** The reading at which the curve gives no force, by Newton's steps from a reading near it. */
function zeroOfCurve(coefficients: readonly number[], from: number): number {
  let reading = from
  for (let step = 0; step < 50; step++) {
    let force = 0
    let slope = 0
    for (let power = coefficients.length - 1; power >= 0; power--) {
      slope = slope * reading + force
      force = force * reading + coefficients[power]!
    }
    if (slope === 0) break
    const next = reading - force / slope
    if (Math.abs(next - reading) <= 1e-12 * Math.max(1, Math.abs(reading))) return next
    reading = next
  }
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
  const forceOf = (reading: number) => coefficients.reduceRight((sum, coefficient) => sum * reading + coefficient, 0)
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
