import { describe, expect, it } from 'vitest'
import { calibrationNotes, type NotedCalibration } from '#domain/calibration/calibrationNotes.ts'
import { defaultCalibrationOptions } from '#domain/calibration/calibrationOptions.ts'

const step = (forceN: number) => ({ forceN, q: 0.1, b: 0.1, v: 0.1, f0: 0.01, a: 0.1, class: '0.5' }) as const
const rows = [1, 2, 3].flatMap((run) =>
  [0, 20, 40, 60, 80, 100].map((forceN) => ({ run, direction: 'up', forceN, reading: forceN * 10 }) as const),
)
const whole: NotedCalibration = {
  rows,
  options: {
    ...defaultCalibrationOptions,
    resolution: 1,
    weightsShare: 1e-4,
    gravityShare: 5e-5,
    creepShare: 1e-4,
    capacityN: 200,
  },
  degree: 1,
  proposal: { degree: 1, reason: 'Degree 1: fine.', tried: [] },
  lackOfFit: null,
  steps: [20, 40, 60, 80, 100].map(step),
  verifiedRangeN: [20, 100],
  degreesOfFreedom: 16,
  repeated: true,
}

describe('notes on a calibration', () => {
  it('are none where nothing is wanting', () => {
    expect(calibrationNotes(whole)).toEqual([])
  })

  it.each<[string, Partial<NotedCalibration>, RegExp]>([
    ['few runs', { rows: rows.filter((row) => row.run === 1) }, /1 run of increasing force; three are good practice/],
    ['few steps', { steps: [step(20)] }, /1 step; five or more/],
    ['no repeats', { repeated: false }, /No step was repeated/],
    ['no decreasing force', { steps: whole.steps.map((line) => ({ ...line, v: null })) }, /reversibility is not known/],
    ['no zero return', { steps: whole.steps.map((line) => ({ ...line, f0: null })) }, /zero error is not known/],
    ['no hold', { options: { ...whole.options, creepShare: null } }, /creeps under a load that stays is not known/],
    ['no resolution', { options: { ...whole.options, resolution: null } }, /resolution of the reading is not known/],
    ['unknown weights', { options: { ...whole.options, weightsShare: null } }, /leaves out the weights, /],
    ['a coarse reading', { verifiedRangeN: null }, /there is no verified range/],
    ['steps below the range', { verifiedRangeN: [50, 100] }, /2 of the steps lie below 200 times the resolution/],
    ['weights far below the capacity', { options: { ...whole.options, capacityN: 5000 } }, /2\.0 % of the capacity/],
    ['a curve through its points', { degreesOfFreedom: 0 }, /as many readings as coefficients/],
    ['another degree than proposed', { degree: 3 }, /Degree 3 was chosen; proposed was: Degree 1/],
    [
      'lack of fit',
      { lackOfFit: { f: 9, lackDegreesOfFreedom: 3, pureDegreesOfFreedom: 10, pureErrorSD: 1, pValue: 0.003 } },
      /lack of fit is significant/,
    ],
    [
      'a curve held at zero off the zero reading',
      {
        options: { ...whole.options, throughZero: true },
        rows: rows.map((row) => ({ ...row, reading: row.reading + 500 })),
      },
      /held at zero, but the reading without load is 500/,
    ],
  ])('name %s', (_what, change, message) => {
    expect(calibrationNotes({ ...whole, ...change })).toEqual([expect.stringMatching(message)])
  })
})
