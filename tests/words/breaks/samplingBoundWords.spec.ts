import { describe, expect, it } from 'vitest'
import { samplingBoundFigure, samplingBoundWords } from '#words/breaks/samplingBoundWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')

describe('samplingBoundWords', () => {
  it('says how much higher the true peak may lie, in force and percent', () => {
    expect(samplingBoundWords({ boundN: 17.9, percent: 0.234 }, force)).toBe(
      'the true peak may lie up to 17.9\u00a0N (0.23 %) higher',
    )
  })
  it('never says that nothing may be missing', () => {
    expect(samplingBoundWords({ boundN: 0.01, percent: 0.0002 }, force)).toBe(
      'the true peak may lie below 0.1\u00a0N (below 0.01 %) higher',
    )
  })
  it('says that it is not known', () => {
    for (const bound of [
      { boundN: null, percent: 1 },
      { boundN: 3, percent: null },
    ])
      expect(samplingBoundWords(bound, force)).toMatch(/is not known$/)
  })
})

describe('samplingBoundFigure', () => {
  it('is what may be added to the peak, in the units shown', () => {
    // 1 lbf = 4.4482216152605 N
    const bound = { boundN: 44.482216152605, percent: 0.5 }
    expect(samplingBoundFigure(bound, quantitiesIn('US').force)).toBe('+10.0\u00a0lbf (0.50 %)')
    expect(samplingBoundFigure({ boundN: 0.01, percent: null }, force)).toBe('below 0.1\u00a0N')
    expect(samplingBoundFigure({ boundN: null, percent: null }, force)).toBe('not known')
  })
})
