import { describe, expect, it } from 'vitest'
import { residualsWords, residualWords, runsWords } from '#words/calibration/charts/residualWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')
const residual = { number: 5, run: 2, direction: 'down' as const, forceN: 49.03, residualN: -0.126 }

describe('words on residuals', () => {
  it('name the reading, its run and direction, the load and the residual with its sign', () => {
    expect(residualWords(residual, force)).toBe('Reading 5, run 2 going down, 49.03\u00a0N: −0.13\u00a0N')
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
