import { describe, expect, it } from 'vitest'
import type { DegreeProposal } from '#contract/calibration/calibrationAssessment.ts'
import { proposalWords } from '#words/calibration/proposalWords.ts'

const test = (pValue: number) => ({ f: 1, lackDegreesOfFreedom: 3, pureDegreesOfFreedom: 10, pureErrorSD: 1, pValue })
const tried = (...pValues: number[]): DegreeProposal['tried'] =>
  pValues.map((pValue, index) => ({ degree: index + 1, lackOfFit: test(pValue) }))

describe('proposalWords', () => {
  it('names the lower degrees that do not do, with how likely that is by chance', () => {
    const words = proposalWords({ degree: 2, reason: { code: 'lack-not-significant' }, tried: tried(1e-6, 0.4) })
    expect(words).toBe(
      'Degree 2: its lack of fit is not significant (probability by chance 40 %), while that of lower degrees is: degree 1 (below 0.01 %).',
    )
  })
  it('says that a line is enough', () => {
    const words = proposalWords({ degree: 1, reason: { code: 'lack-not-significant' }, tried: tried(0.3, 0.5) })
    expect(words).toMatch(/^Degree 1: .*30 %\), so nothing more is needed\.$/)
  })
  it('sends to look for a step that is off where no degree does', () => {
    const words = proposalWords({ degree: 2, reason: { code: 'all-lack' }, tried: tried(0.001, 0.002) })
    expect(words).toMatch(/significant for degree 1 \(0\.1 %\), degree 2 \(0\.2 %\)\. Look for a step that is off\.$/)
  })
  it('gives the probability of the coefficient that was not needed', () => {
    expect(proposalWords({ degree: 1, reason: { code: 'next-not-significant', pValue: 0.2 }, tried: [] })).toContain(
      '(probability by chance 20 %)',
    )
  })
  it('repeats what an older record holds as a sentence', () => {
    expect(proposalWords({ degree: 1, reason: 'Degree 1: enough.', tried: [] })).toBe('Degree 1: enough.')
  })
})
