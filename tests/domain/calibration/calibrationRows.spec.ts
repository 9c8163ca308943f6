import { describe, expect, it } from 'vitest'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { Trouble } from '#contract/errors.ts'
import { checkCalibrationRows, checkEnoughSteps, stepOfForce } from '#domain/calibration/calibrationRows.ts'

type Short = readonly [number, 'up' | 'down', number, number]
const rowsOf = (...short: Short[]): CalibrationRow[] =>
  short.map(([run, direction, forceN, reading]) => ({ run, direction, forceN, reading }))
const options = { capacityN: 1000, invertedAccepted: false }

describe('rows of a calibration', () => {
  it('may rise from a zero point, fall back to it, and do so again in another run', () => {
    const rows = rowsOf(
      [1, 'up', 0, 5],
      [1, 'up', 50, 105],
      [1, 'up', 100, 205],
      [1, 'down', 100, 205],
      [1, 'down', 50, 106],
      [1, 'down', 0, 6],
      [2, 'up', 50, 104],
      [2, 'up', 100, 204],
    )
    expect(() => checkCalibrationRows(rows, options)).not.toThrow()
  })

  it.each<[string, Short[], RegExp]>([
    ['no rows', [], /no reading at all/],
    ['a negative force', [[1, 'up', -5, 0]], /Row 1 \(run 1, up, -5 N\): the force is negative/],
    ['a force that is not finite', [[1, 'up', Number.NaN, 0]], /must both be numbers/],
    [
      'a weight heavier than the capacity',
      [
        [1, 'up', 10, 0],
        [1, 'up', 1001, 5],
      ],
      /Row 2 .*more than the rated load of 1000 N/,
    ],
    [
      'two equal loads in one run',
      [
        [1, 'up', 50, 1],
        [1, 'up', 50, 2],
      ],
      /Row 2 .*same load was already applied/,
    ],
    [
      'decreasing order in an increasing run',
      [
        [1, 'up', 50, 1],
        [1, 'up', 40, 0.8],
      ],
      /lower than 50 N before it, in a run that increases/,
    ],
    [
      'increasing order in a decreasing part',
      [
        [1, 'up', 50, 1],
        [1, 'down', 20, 0.4],
        [1, 'down', 30, 0.6],
      ],
      /higher than 20 N/,
    ],
    [
      'a second rise in one run',
      [
        [1, 'up', 50, 1],
        [1, 'down', 20, 0.4],
        [1, 'up', 30, 0.6],
      ],
      /goes up again/,
    ],
    [
      'a decreasing part above the load before it',
      [
        [1, 'up', 50, 1],
        [1, 'down', 60, 1.2],
      ],
      /higher than 50 N/,
    ],
    [
      'a reading that does not move',
      [
        [1, 'up', 50, 7],
        [1, 'up', 60, 7],
      ],
      /does not change with the load/,
    ],
    [
      'one reading that moves the wrong way',
      [
        [1, 'up', 10, 1],
        [1, 'up', 20, 2],
        [1, 'up', 30, 1.5],
        [1, 'up', 40, 4],
      ],
      /Row 3 .*moves the wrong way, from 2 at 20 N to 1.5/,
    ],
  ])('say what is wrong with %s', (_what, short, message) => {
    expect(() => checkCalibrationRows(rowsOf(...short), options)).toThrow(Trouble)
    expect(() => checkCalibrationRows(rowsOf(...short), options)).toThrow(message)
  })

  it('offer to invert a cell that is wired in reverse, and take it once that is agreed', () => {
    const rows = rowsOf([1, 'up', 10, -100], [1, 'up', 20, -200], [1, 'up', 30, -301])
    expect(() => checkCalibrationRows(rows, options)).toThrow(/wired in reverse/)
    try {
      checkCalibrationRows(rows, options)
    } catch (trouble) {
      expect((trouble as Trouble).hint).toMatch(/Accept the reversed sign/)
    }
    expect(() => checkCalibrationRows(rows, { ...options, invertedAccepted: true })).not.toThrow()
  })

  it('may differ by little, and are one load where they differ in rounding only', () => {
    const order = (...short: Short[]) => checkCalibrationRows(rowsOf(...short), options)
    expect(() => order([1, 'up', 50, 1], [1, 'up', 50.5, 2], [1, 'down', 50.2, 1.5])).not.toThrow()
    expect(() => order([1, 'up', 50, 1], [1, 'up', 49.5, 0.9])).toThrow(/lower than 50 N/)
    expect(() => order([1, 'down', 50, 1], [1, 'down', 50.5, 1.1])).toThrow(/higher than 50 N/)
    expect(() => order([1, 'up', -0.5, 1])).toThrow(/negative/)
    expect(() => order([1, 'up', 1000, 1])).not.toThrow()
    // Twelve digits tell two loads apart, a thirteenth does not.
    expect([100.000000001, 100.00000000004, 0.1 + 0.2].map(stepOfForce)).toEqual([100.000000001, 100, 0.3])
  })

  it('go the way that most of them go, and upwards where as many go either way', () => {
    const balanced = rowsOf([1, 'up', 10, 1], [1, 'up', 20, 2], [1, 'up', 30, 1.5])
    for (const invertedAccepted of [false, true])
      expect(() => checkCalibrationRows(balanced, { ...options, invertedAccepted })).toThrow(
        /Row 3 .*moves the wrong way, from 2 at 20 N to 1.5/,
      )
    const reversed = rowsOf([1, 'up', 10, 2], [1, 'up', 20, 1])
    expect(() => checkCalibrationRows(reversed, options)).toThrow(/wired in reverse/)
    expect(() => checkCalibrationRows(reversed, { ...options, invertedAccepted: true })).not.toThrow()
    const oneRises = rowsOf([1, 'up', 10, 5], [1, 'up', 20, 3], [1, 'up', 30, 4], [1, 'up', 40, 1])
    expect(() => checkCalibrationRows(oneRises, { ...options, invertedAccepted: true })).toThrow(
      /Row 3 .*moves the wrong way, from 3 at 20 N to 4/,
    )
  })

  it('tell nothing of the way where each run has one reading', () => {
    expect(() => checkCalibrationRows(rowsOf([1, 'up', 10, 1], [2, 'up', 10, 1]), options)).not.toThrow()
  })

  it('are no load of a curve held at zero where force or reading is zero', () => {
    const rows = rowsOf([1, 'up', 0, 3], [1, 'up', 0.5, 1], [1, 'up', 40, 0])
    expect(() => checkEnoughSteps(rows, 1, true)).not.toThrow()
    expect(() => checkEnoughSteps(rows, 2, true)).toThrow(/there is 1/)
    expect(() => checkEnoughSteps(rowsOf([1, 'up', 0.5, -1]), 1, true)).not.toThrow()
  })

  it('must be more, or the degree lower where it can be', () => {
    const hintOf = (degree: number) => {
      try {
        checkEnoughSteps(rowsOf([1, 'up', 50, 1]), degree, false)
      } catch (trouble) {
        return (trouble as Trouble).hint
      }
      return null
    }
    expect(hintOf(1)).toBe('Apply more loads.')
    expect(hintOf(2)).toBe('Apply more loads, or choose a lower degree.')
  })

  it('must have a different load for every coefficient', () => {
    const rows = rowsOf([1, 'up', 0, 0], [1, 'up', 50, 1], [2, 'up', 50, 1.1], [1, 'up', 90, 2])
    expect(() => checkEnoughSteps(rows, 2, false)).not.toThrow()
    expect(() => checkEnoughSteps(rows, 3, false)).toThrow(/degree 3 needs at least 4 different loads.*there are 3/)
    // Held at zero, the zero point is no load.
    expect(() => checkEnoughSteps(rows, 2, true)).not.toThrow()
    expect(() => checkEnoughSteps(rows, 3, true)).toThrow(/needs at least 3 .*there are 2/)
    expect(() => checkEnoughSteps(rowsOf([1, 'up', 50, 1], [2, 'up', 50, 1]), 1, false)).toThrow(/there is 1/)
  })
})
