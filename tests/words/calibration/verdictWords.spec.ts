import { describe, expect, it } from 'vitest'
import type { CheckVerdict } from '#contract/calibration/checkWeight.ts'
import { verdictWords } from '#words/calibration/verdictWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')
const outside: CheckVerdict = {
  standing: 'outside',
  finding: 'beyond-uncertainty',
  deviationN: -0.7,
  allowedN: 0.5,
  checksMissing: 6,
  lowerN: -0.5,
  upperN: 0.5,
}

describe('verdictWords', () => {
  it('says by how much the weight reads wrong and forbids to go on', () => {
    const { sentence, action } = verdictWords(outside, force)
    expect(sentence).toBe('The check weight reads −0.700\u00a0N off, more than the uncertainty of 0.500\u00a0N allows.')
    expect(action).toMatch(/^Do not test yet: .* calibrate before testing\.$/)
  })
  it('gives the limits in the units shown', () => {
    // 1 lbf = 4.4482216152605 N
    const words = verdictWords(
      { ...outside, finding: 'beyond-limits', deviationN: 4.4482216152605 },
      quantitiesIn('US').force,
    )
    expect(words.sentence).toBe(
      'The check weight reads 1.00\u00a0lbf off, outside its limits of −0.112 to 0.112\u00a0lbf.',
    )
  })
  it('says how many checks a chart still wants', () => {
    const few = { ...outside, standing: 'too-few', finding: 'within-uncertainty', checksMissing: 7 } as const
    expect(verdictWords(few, force)).toEqual({
      sentence: expect.stringContaining('7 more checks are needed'),
      action: 'Go on.',
    })
  })
  it.each([
    ['drift', /drifts slowly/],
    ['one-sided', /last 8 checks all lie on one side of the centre/],
  ] as const)('warns of %s and lets testing go on', (finding, pattern) => {
    const { sentence, action } = verdictWords({ ...outside, standing: 'watch', finding }, force)
    expect(sentence).toMatch(pattern)
    expect(action).toMatch(/^Testing may go on today/)
  })
})
