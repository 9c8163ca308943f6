import { describe, expect, it } from 'vitest'
import type { CalibrationNote } from '#contract/calibration/calibrationNotes.ts'
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
  proposal: { degree: 1, reason: { code: 'exact' }, tried: [] },
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

  it.each<[string, Partial<NotedCalibration>, CalibrationNote]>([
    ['few runs', { rows: rows.filter((row) => row.run === 1) }, { code: 'few-runs', runs: 1 }],
    ['few steps', { steps: [step(20)] }, { code: 'few-steps', steps: 1 }],
    ['no repeats', { repeated: false }, { code: 'not-repeated' }],
    ['no decreasing force', { steps: whole.steps.map((line) => ({ ...line, v: null })) }, { code: 'no-decreasing' }],
    ['no zero return', { steps: whole.steps.map((line) => ({ ...line, f0: null })) }, { code: 'no-zero-return' }],
    ['no hold', { options: { ...whole.options, creepShare: null } }, { code: 'no-hold' }],
    ['no resolution', { options: { ...whole.options, resolution: null } }, { code: 'no-resolution' }],
    [
      'unknown weights',
      { options: { ...whole.options, weightsShare: null } },
      { code: 'left-out', shares: ['weights'] },
    ],
    ['a coarse reading', { verifiedRangeN: null }, { code: 'no-range' }],
    ['steps below the range', { verifiedRangeN: [50, 100] }, { code: 'steps-below-range', steps: 2 }],
    [
      'weights far below the capacity',
      { options: { ...whole.options, capacityN: 5000 } },
      { code: 'far-below-capacity', percent: 2 },
    ],
    ['a curve through its points', { degreesOfFreedom: 0 }, { code: 'no-degrees-of-freedom' }],
    ['another degree than proposed', { degree: 3 }, { code: 'degree-chosen', degree: 3 }],
    [
      'lack of fit',
      { lackOfFit: { f: 9, lackDegreesOfFreedom: 3, pureDegreesOfFreedom: 10, pureErrorSD: 1, pValue: 0.003 } },
      { code: 'lack-of-fit' },
    ],
    [
      'a curve held at zero off the zero reading',
      {
        options: { ...whole.options, throughZero: true },
        rows: rows.map((row) => ({ ...row, reading: row.reading + 500 })),
      },
      { code: 'zero-reading', reading: 500 },
    ],
  ])('name %s', (_what, change, note) => {
    expect(calibrationNotes({ ...whole, ...change })).toEqual([note])
  })
})

describe('the limits of a note', () => {
  const codesOf = (change: Partial<NotedCalibration>) =>
    calibrationNotes({ ...whole, ...change }).map(({ code }) => code)
  const lack = (pValue: number) => ({ f: 3, lackDegreesOfFreedom: 3, pureDegreesOfFreedom: 10, pureErrorSD: 1, pValue })

  it('are three runs and five steps', () => {
    expect(calibrationNotes({ ...whole, rows: rows.filter(({ run }) => run < 3) })).toEqual([
      { code: 'few-runs', runs: 2 },
    ])
    expect(calibrationNotes({ ...whole, steps: whole.steps.slice(1) })).toEqual([{ code: 'few-steps', steps: 4 }])
  })

  it('are a fifth of the capacity, and one step below the range', () => {
    expect(codesOf({ options: { ...whole.options, capacityN: 500 } })).toEqual([])
    expect(codesOf({ options: { ...whole.options, capacityN: 501 } })).toEqual(['far-below-capacity'])
    expect(calibrationNotes({ ...whole, verifiedRangeN: [30, 100] })).toEqual([{ code: 'steps-below-range', steps: 1 }])
  })

  it('is a probability below 5 %', () => {
    expect(codesOf({ lackOfFit: lack(0.05) })).toEqual([])
    expect(codesOf({ lackOfFit: lack(0.0499) })).toEqual(['lack-of-fit'])
  })

  it('is a reading without load that is more than a hundredth of the span of all readings', () => {
    // The readings span 1000 whatever the zero is.
    const heldAt = (zero: number) =>
      codesOf({
        options: { ...whole.options, throughZero: true },
        rows: rows.map((row) => ({ ...row, reading: row.reading + zero })),
      })
    expect([9.9, 10, -9.9].flatMap(heldAt)).toEqual([])
    expect([10.1, -10.1].flatMap(heldAt)).toEqual(['zero-reading', 'zero-reading'])
  })
})
