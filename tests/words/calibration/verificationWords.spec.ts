import { describe, expect, it } from 'vitest'
import type { Verification } from '#contract/calibration/verification.ts'
import { verificationWords } from '#words/calibration/verificationWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

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
    expect(verificationWords(verification, force)).toBe('Accurate within ±0.4\u00a0N (0.15 %), k = 2.')
  })
  it('says how many times the highest weight a force above the range is', () => {
    const above = { ...verification, timesVerified: 8.62, expandedUncertaintyN: null, expandedUncertaintyPercent: null }
    expect(verificationWords(above, force)).toMatch(/^8\.62 times the highest force of the calibration .*559\.3/)
  })
  it('does not speak of uncertainty below the range, or where there is none', () => {
    const below = { ...verification, timesVerified: 0.05, expandedUncertaintyN: null, expandedUncertaintyPercent: null }
    expect(verificationWords(below, force)).toContain('Outside the verified range')
    expect(verificationWords({ ...below, verifiedRangeN: null }, force)).toContain('no verified range')
  })
})
