import { describe, expect, it } from 'vitest'
import {
  controlWords,
  driftWords,
  residualsWords,
  residualWords,
  runsWords,
  signedForce,
  stepErrorsWords,
  stepErrorWords,
} from '#words/calibration/chartWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')
const residual = { number: 5, run: 2, direction: 'down' as const, forceN: 49.03, residualN: -0.126 }

describe('words on residuals', () => {
  it('name the reading, its run and direction, the load and the residual with its sign', () => {
    expect(residualWords(residual, force)).toBe('Reading 5, run 2 going down, 49.03\u00a0N: −0.13 N')
  })
  it('single out the one farthest from zero, whichever side it lies on', () => {
    const words = residualsWords([{ ...residual, number: 4, run: 1, residualN: 0.12 }, residual], force)
    expect(words).toMatch(/^2 readings in 2 runs\. .* Reading 5, /)
    expect(residualsWords([], force)).toBe('There is no reading.')
  })
  it('name several runs by one shape where there are more runs than shapes', () => {
    expect(runsWords(2, 3, 4)).toBe('run 2')
    expect(runsWords(2, 9, 4)).toBe('runs 2, 6, …')
  })
})

describe('words on errors of steps', () => {
  it('give load and error, and single out the largest', () => {
    expect(stepErrorWords({ forceN: 100, errorPercent: 0.5 }, force)).toBe('100.00\u00a0N: +0.50 %')
    const steps = [0.1, -0.7].map((errorPercent) => ({ forceN: 100, errorPercent }))
    expect(stepErrorsWords(steps, force)).toBe('2 steps. The error farthest from zero: 100.00\u00a0N: −0.70 %.')
    expect(stepErrorsWords([], force)).toBe('There is no step with an error.')
  })
})

describe('words on a control chart', () => {
  it('give centre, limits and what lies outside', () => {
    expect(controlWords({ count: 17, centreN: 0.05, limitsN: [-0.25, 0.34], outside: ['check 17'] }, force)).toBe(
      '17 values. Centre +0.05 N. Limits −0.25 N to +0.34 N. Outside: check 17.',
    )
  })
  it('give one limit where there is no lower one, and say that none is outside', () => {
    expect(controlWords({ count: 1, centreN: null, limitsN: [null, 0.34], outside: [] }, force)).toBe(
      '1 value. Upper limit +0.34 N. None is outside.',
    )
  })
  it('say that there are no limits yet', () => {
    expect(controlWords({ count: 1, centreN: null, limitsN: null, outside: [] }, force)).toMatch(/no limits yet/)
  })
})

it('says of drift from when to when and how far', () => {
  expect(driftWords(['2031-04-01T12:00:00.000Z', '2032-04-01T12:00:00.000Z'], '0.1 %')).toBe(
    '2 calibrations, 1 Apr 2031 to 1 Apr 2032. The newest against the first: 0.1 %.',
  )
  expect(driftWords([], '')).toBe('There is no calibration.')
})

it('writes a force with its sign in the chosen unit', () => {
  expect(signedForce(4.4482216152605, quantitiesIn('US').force)).toBe('+1.00 lbf')
})
