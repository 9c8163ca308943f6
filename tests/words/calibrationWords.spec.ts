import { describe, expect, it } from 'vitest'
import type { Verification } from '#contract/calibration/calibrationUse.ts'
import { lackOfFitWords, loadText, rangeText, signedNumber, verificationWords } from '#words/calibrationWords.ts'
import { quantitiesIn } from '#words/quantities.ts'

const { force } = quantitiesIn('SI')
const verification: Verification = {
  calibrationId: 1,
  name: 'Spring',
  verifiedRangeN: [49.1, 559.3],
  timesVerified: 0.5,
  expandedUncertaintyN: 0.42,
  expandedUncertaintyPercent: 0.15,
}

describe('verificationWords', () => {
  it('gives the uncertainty of a force inside the verified range', () => {
    expect(verificationWords(verification, force)).toBe('True within ±0.4\u00a0N (0.15 %), k = 2.')
  })
  it('says how many times the highest weight a force above the range is', () => {
    const above = { ...verification, timesVerified: 8.62, expandedUncertaintyN: null, expandedUncertaintyPercent: null }
    expect(verificationWords(above, force)).toMatch(/^8\.62 times the highest weight .*559\.3/)
  })
  it('does not speak of uncertainty below the range, or where there is none', () => {
    const below = { ...verification, timesVerified: 0.05, expandedUncertaintyN: null, expandedUncertaintyPercent: null }
    expect(verificationWords(below, force)).toContain('Outside the verified range')
    expect(verificationWords({ ...below, verifiedRangeN: null }, force)).toContain('no verified range')
  })
})

describe('words of figures', () => {
  it('shows known loads to the hundredth, in the units of the program', () => {
    expect(loadText(147.084, force)).toBe('147.08\u00a0N')
    expect(loadText(4448.2216152605, quantitiesIn('US').force)).toBe('1000.0\u00a0lbf')
  })
  it('gives changes a sign, and none to nothing', () => {
    expect([signedNumber(0.0123, 2), signedNumber(-0.5, 1), signedNumber(0.001, 2), signedNumber(null, 2)]).toEqual([
      '+0.01',
      '−0.5',
      '0.00',
      '–',
    ])
  })
  it('says that there is no range', () => expect(rangeText(null, force)).toBe('none'))
  it('says whether a lack of fit is significant', () => {
    const test = { f: 214.7, lackDegreesOfFreedom: 18, pureDegreesOfFreedom: 20, pureErrorSD: 1, pValue: 1e-9 }
    expect(lackOfFitWords(test)).toMatch(/F\(18, 20\) = 214\.7.*significant/)
    expect(lackOfFitWords({ ...test, pValue: 0.4 })).toContain('not significant')
    expect(lackOfFitWords(null)).toContain('no step was repeated')
  })
})
