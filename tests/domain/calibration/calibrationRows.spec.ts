import { describe, expect, it } from 'vitest'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { Trouble } from '#contract/errors.ts'
import { checkCalibrationRows, checkEnoughSteps } from '#domain/calibration/calibrationRows.ts'

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
      /Row 2 .*more than the capacity of 1000 N/,
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
      expect((trouble as Trouble).hint).toMatch(/invert the reading/)
    }
    expect(() => checkCalibrationRows(rows, { ...options, invertedAccepted: true })).not.toThrow()
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
