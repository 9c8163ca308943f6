import { expect, it } from 'vitest'
import { failedBondWords, heldBondWords, weibullWords } from '#words/findings/weibullWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { strength } = quantitiesIn('SI')
const parts = {
  ...{ failed: 10, held: 0, parameters: { scaleMPa: 9.5, shape: 8.123 }, why: null, confidence: 0.95 },
  tenth: { strengthMPa: 7.2, low: 6.1, high: 8 },
}

it('says counts, fit and the strength of one in ten with its interval', () => {
  expect(weibullWords('E4', parts, strength)).toBe(
    'E4: 10 bonds failed. Weibull of shape 8.12 and scale 9.50\u00a0MPa. One bond in ten fails below 7.20\u00a0MPa (95 % interval 6.10 to 8.00\u00a0MPa).',
  )
})

it('gives no interval where the data do not bound it', () => {
  expect(weibullWords('E4', { ...parts, tenth: { ...parts.tenth, low: null } }, strength)).toMatch(
    /\(the data do not bound this on both sides\)/,
  )
})

it('says why there is no line', () => {
  const none = { ...parts, failed: 0, held: 3, parameters: null, tenth: null }
  expect(weibullWords('E4', { ...none, why: 'no-failure' }, strength)).toBe(
    'E4: 0 bonds failed, 3 bonds outlasted the wood. No bond failed, so that no line can be fitted.',
  )
  expect(weibullWords('E4', { ...none, why: 'no-spread' }, strength)).toMatch(/show no spread/)
})

it('says what a single bond tells', () => {
  expect(failedBondWords('E4-1', 8, 0.25, strength)).toBe('E4-1: failed at 8.00\u00a0MPa, 25 % of bonds fail below')
  expect(heldBondWords('E4-2', 8, strength)).toBe('E4-2: held 8.00\u00a0MPa, then the wood failed')
})
