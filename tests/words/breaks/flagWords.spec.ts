import { describe, expect, it } from 'vitest'
import { flagListWords } from '#words/breaks/flagWords.ts'

describe('flagListWords', () => {
  const flags = ['uncalibrated', 'glitch', 'peak-picked'] as const

  it('says a person’s word on the peak before all else', () => {
    expect(flagListWords({ flags: [...flags], verification: null })).toBe(
      'peak picked by hand, uncalibrated, spike left out',
    )
  })
  it('says once that samples are missing where the peak is', () => {
    expect(flagListWords({ flags: ['gap', 'gap-at-peak', 'uncalibrated'], verification: null }, 2)).toBe(
      'gap at peak, uncalibrated',
    )
    expect(flagListWords({ flags: ['gap'], verification: null })).toBe('gap')
  })
  it('counts what there is no room for', () => {
    expect(flagListWords({ flags: [...flags], verification: null }, 2)).toBe('peak picked by hand, uncalibrated, +1')
    expect(flagListWords({ flags: ['uncalibrated', 'glitch'], verification: null }, 2)).toBe(
      'uncalibrated, spike left out',
    )
  })
})
