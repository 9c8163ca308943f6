import { expect, test } from 'vitest'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { driftBetween, driftFigures } from '#domain/calibration/control/calibrationDrift.ts'

/** A straight cell: reading = zero + force / slope, by definition. */
function straight(zero: number, slopeN: number, withZero: boolean) {
  const rows = (withZero ? [0, 100, 200, 300] : [100, 200, 300]).map(
    (forceN): CalibrationRow => ({ run: 1, direction: 'up', forceN, reading: zero + forceN / slopeN }),
  )
  return { rows, assessment: calibrationOf(rows, { degree: 1 }) }
}

test('finds slope and zero of a straight cell', () => {
  const { slopeN, zeroReading } = driftFigures(straight(5000, 0.01, true))
  expect(slopeN).toBeCloseTo(0.01, 12)
  expect(zeroReading).toBeCloseTo(5000, 6)
})

test('finds the zero on the curve where none was read', () => {
  expect(driftFigures(straight(5000, 0.01, false)).zeroReading).toBeCloseTo(5000, 5)
})

test('takes the mean slope of a bent curve from zero to the highest force', () => {
  const rows = [0, 100, 200, 300].map(
    (reading): CalibrationRow => ({ run: 1, direction: 'up', forceN: reading + reading ** 2 / 1000, reading }),
  )
  // F(300) = 390 N over 300 units.
  expect(driftFigures({ rows, assessment: calibrationOf(rows, { degree: 2 }) }).slopeN).toBeCloseTo(1.3, 10)
})

test('gives the change of slope in percent and that of the zero in newtons of the newer slope', () => {
  const change = driftBetween({ slopeN: 0.01, zeroReading: 5000 }, { slopeN: 0.0101, zeroReading: 4900 })
  expect(change.slopeChangePercent).toBeCloseTo(1, 10)
  expect(change.zeroChangeN).toBeCloseTo(-1.01, 12)
})
