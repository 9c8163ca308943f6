import { describe, expect, it } from 'vitest'
import { flagListWords } from '#words/breaks/flagWords.ts'

describe('flagListWords', () => {
  const measured = { verification: null, resultsOfSpecimen: 1, demo: false, simulated: false }
  const flags = ['uncalibrated', 'glitch', 'peak-picked'] as const

  it('says before all else that nobody measured it', () => {
    const ofOwnBlock = { flags: [...flags], ...measured, simulated: true }
    expect(flagListWords(ofOwnBlock, 2)).toBe('simulated, peak picked by hand, +2')
  })
  it('says that its specimen has another result too', () => {
    expect(flagListWords({ flags: ['glitch'], ...measured, resultsOfSpecimen: 2 })).toBe(
      '2 results on this specimen, spike left out',
    )
  })
  it('says a person’s word on the peak before all else', () => {
    expect(flagListWords({ flags: [...flags], ...measured })).toBe('peak picked by hand, uncalibrated, spike left out')
  })
  it('says once that samples are missing where the peak is', () => {
    expect(flagListWords({ flags: ['gap', 'gap-at-peak', 'uncalibrated'], ...measured }, 2)).toBe(
      'gap at peak, uncalibrated',
    )
    expect(flagListWords({ flags: ['gap'], ...measured })).toBe('gap')
  })
  it('counts what there is no room for', () => {
    expect(flagListWords({ flags: [...flags], ...measured }, 2)).toBe('peak picked by hand, uncalibrated, +1')
    expect(flagListWords({ flags: ['uncalibrated', 'glitch'], ...measured }, 2)).toBe('uncalibrated, spike left out')
  })
})
