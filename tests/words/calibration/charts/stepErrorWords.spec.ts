import { describe, expect, it } from 'vitest'
import { stepErrorsWords, stepErrorWords } from '#words/calibration/charts/stepErrorWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')

describe('words on errors of steps', () => {
  it('give load and error, and single out the largest', () => {
    expect(stepErrorWords({ forceN: 100, errorPercent: 0.5 }, force)).toBe('100.00\u00a0N: +0.50 %')
    const steps = [0.1, -0.7].map((errorPercent) => ({ forceN: 100, errorPercent }))
    expect(stepErrorsWords(steps, force)).toBe('2 steps. The error farthest from zero: 100.00\u00a0N: −0.70 %.')
    expect(stepErrorsWords([], force)).toBe('There is no step with an error.')
  })
})
