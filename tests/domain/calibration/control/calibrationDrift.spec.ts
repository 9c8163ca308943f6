import { describe, expect, test } from 'vitest'
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

describe('the figures of any curve', () => {
  const row = (forceN: number, reading: number, direction: 'up' | 'down' = 'up'): CalibrationRow => ({
    run: 1,
    direction,
    forceN,
    reading,
  })
  const { assessment } = straight(0, 1, true)
  /** What a record holds of a curve that somebody gives, with the rows beside it. */
  const figures = (coefficients: number[], rows: CalibrationRow[]) =>
    driftFigures({ rows, assessment: { ...assessment, result: { ...assessment.result, coefficients } } })

  test('have the zero where a bent curve gives no force', () => {
    // F = (r - 1000)(r + 9000) / 1e6 is 0 at 1000; its slope from there to the reading of 7000 is 16000 / 1e6.
    const found = figures([-9, 8e-3, 1e-6], [row(11, 2000), row(96, 7000)])
    expect(found.zeroReading).toBeCloseTo(1000, 8)
    expect(found.slopeN).toBeCloseTo(0.016, 12)
  })

  test('have it at the lightest load where a level curve has no zero', () => {
    expect(figures([5], [row(5, 8), row(7, 10)]).zeroReading).toBe(8)
    expect(figures([5], [row(7, 10), row(5, 8)]).zeroReading).toBe(8)
  })

  test.each([1, -1])('have it for a slope of %d too', (slope) => {
    expect(figures([-3 * slope, slope], [row(5, 8), row(7, 10)]).zeroReading).toBeCloseTo(3, 12)
  })

  test('have it where the force rises without load being read: the mean of the zero points going up', () => {
    const rows = [row(0, 5), row(0, 7), row(0, 90, 'down'), row(100, 106)]
    // The line F = r - 4 gives 102 N at 106 and 2 N at the mean zero reading of 6: (102 - 2) / (106 - 6).
    expect(figures([-4, 1], rows)).toEqual({ zeroReading: 6, slopeN: 1 })
    expect(figures([-4, 1], [row(0, 5), row(100, 105)]).zeroReading).toBe(5)
  })

  test('are of any size, but not without a change of the reading', () => {
    expect(figures([0, 2], [row(0, 5), row(1, 5.5)]).slopeN).toBeCloseTo(2, 12)
    expect(figures([0, 2], [row(0, -5), row(20, 5)]).slopeN).toBeCloseTo(2, 12)
    expect(() => figures([0, 2], [row(0, 5), row(20, 5)])).toThrow(RangeError)
    // Up alone tells of the highest force, too.
    expect(figures([0, 2], [row(0, 0), row(20, 10), row(20, 90, 'down')]).slopeN).toBeCloseTo(2, 12)
  })
})
