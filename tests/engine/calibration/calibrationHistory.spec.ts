import { describe, expect, it } from 'vitest'
import type { Calibration } from '#contract/calibration/calibration.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { calibrationSummary, driftOf } from '#engine/calibration/calibrationHistory.ts'
import { madeCalibration } from '../../archive/storedCalibration.ts'

/** A straight cell: so many newtons a count, so many counts without load, read at 0 and three loads. */
function cell(calibrationId: number, nPerCount: number, zero: number, change: Partial<Calibration> = {}): Calibration {
  const rows = [0, 200, 400, 600].map((forceN) => ({
    run: 1,
    direction: 'up' as const,
    forceN,
    reading: zero + forceN / nPerCount,
  }))
  const assessment = calibrationOf(rows, { degree: 1 })
  return { ...madeCalibration({ rows, readings: [], assessment, ...change }), calibrationId }
}

describe('drift', () => {
  it('holds each calibration against the one before it', () => {
    const drift = driftOf([cell(1, 0.01, 100), cell(2, 0.0101, 150), cell(3, 0.0101, 140)])
    expect(drift.map(({ calibrationId, previousId }) => [calibrationId, previousId])).toEqual([
      [1, null],
      [2, 1],
      [3, 2],
    ])
    expect(drift[0]).toMatchObject({ slopeChangePercent: null, zeroChangeN: null, temperatureStartC: null })
    // By hand: 0.0101 over 0.01 is 1 % more; 50 counts of 0.0101 N are 0.505 N; then no change, and -10 counts.
    expect(drift[1]!.slopeN).toBeCloseTo(0.0101, 12)
    expect(drift[1]!.zeroReading).toBe(150)
    expect(drift[1]!.slopeChangePercent).toBeCloseTo(1, 9)
    expect(drift[1]!.zeroChangeN).toBeCloseTo(0.505, 9)
    expect(drift[2]!.slopeChangePercent).toBeCloseTo(0, 9)
    expect(drift[2]!.zeroChangeN).toBeCloseTo(-0.101, 9)
  })

  it('never compares the virtual amplifier, or readings in newtons, with the cell on the bench', () => {
    const drift = driftOf([
      cell(1, 0.01, 100),
      cell(2, 0.02, 0, { device: 'virtual' }),
      cell(3, 1.01, 0, { readingUnit: 'N' }),
      cell(4, 0.01, 100),
    ])
    expect(drift.map(({ previousId }) => previousId)).toEqual([null, null, null, 1])
    expect(drift[3]!.slopeChangePercent).toBeCloseTo(0, 9)
  })

  it('of no calibration is empty', () => {
    expect(driftOf([])).toEqual([])
  })
})

describe('a line of the list', () => {
  const made = cell(7, 0.01, 100, { dueOn: '2032-05-02' })

  it('says what a calibration is worth and whether it is in force', () => {
    const { result } = made.assessment
    expect(calibrationSummary(made, 7, '2032-05-01T12:00:00.000Z')).toMatchObject({
      calibrationId: 7,
      degree: 1,
      class: result.class,
      verifiedRangeN: [200, 600],
      inForce: true,
      overdue: false,
    })
    expect(calibrationSummary(made, 6, '2032-05-01T12:00:00.000Z').inForce).toBe(false)
  })

  it('is overdue from the day after the due date, and never without one', () => {
    expect(calibrationSummary(made, null, '2032-05-02T23:00:00.000Z').overdue).toBe(false)
    expect(calibrationSummary(made, null, '2032-05-03T00:00:00.000Z').overdue).toBe(true)
    expect(calibrationSummary({ ...made, dueOn: null }, null, '2040-01-01T00:00:00.000Z').overdue).toBe(false)
  })

  it('counts the readings of a routine, also the replaced ones, and the lines of a file', () => {
    expect(calibrationSummary(made, null, '2032-01-01T00:00:00.000Z').readings).toBe(4)
    const { readings } = madeCalibration()
    const replaced = readings.map((reading) => ({ ...reading, standing: 'replaced' as const, replacedBy: 0 }))
    const both = { ...made, readings: [...readings, ...replaced] }
    expect(calibrationSummary(both, null, '2032-01-01T00:00:00.000Z').readings).toBe(16)
  })
})
