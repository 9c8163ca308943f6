import { describe, expect, it } from 'vitest'
import { effectiveDegreesOfFreedom } from '#domain/calibration/uncertainty/effectiveDegreesOfFreedom.ts'

describe('effective degrees of freedom', () => {
  it('agrees with JCGM 100 H.1, not rounded before', () => {
    // Formula: JCGM 100:2008, (G.2b), read in the edition of iso.org. Inputs of H.1 and printed 16.7 from memory: comparator 25 nm (18); difference 9.7 nm (25.6);
    // expansion 50.000623 mm · 0.1 K · 0.58e-6 /K (50); temperature 50.000623 mm · 11.5e-6 /K · 0.029 K (2).
    // Unrounded 16.656, recomputed from these inputs; with u_c rounded to 32 nm first it would be 17.47.
    const lengthNm = 50.000623e6
    const freedom = effectiveDegreesOfFreedom([
      { standardUncertainty: 25, degreesOfFreedom: 18 },
      { standardUncertainty: 9.7, degreesOfFreedom: 25.6 },
      { standardUncertainty: lengthNm * 0.1 * 0.58e-6, degreesOfFreedom: 50 },
      { standardUncertainty: lengthNm * 11.5e-6 * 0.029, degreesOfFreedom: 2 },
    ])!
    expect(Math.abs(freedom - 16.656)).toBeLessThan(1e-3)
    expect(Math.floor(freedom)).toBe(16)
  })

  it('is that of the only contribution, and adds up for equal ones', () => {
    // By hand: (2 u²)² / (2 u⁴ / 7) = 14.
    expect(effectiveDegreesOfFreedom([{ standardUncertainty: 3, degreesOfFreedom: 7 }])).toBe(7)
    const two = { standardUncertainty: 3, degreesOfFreedom: 7 }
    expect(effectiveDegreesOfFreedom([two, two])).toBeCloseTo(14, 12)
  })

  it('is infinite, so null, where nothing has finite degrees of freedom', () => {
    expect(effectiveDegreesOfFreedom([{ standardUncertainty: 3, degreesOfFreedom: null }])).toBeNull()
    expect(effectiveDegreesOfFreedom([])).toBeNull()
    expect(effectiveDegreesOfFreedom([{ standardUncertainty: 0, degreesOfFreedom: 5 }])).toBeNull()
  })

  it('may be one, or less', () => {
    for (const degreesOfFreedom of [1, 0.5])
      expect(effectiveDegreesOfFreedom([{ standardUncertainty: 3, degreesOfFreedom }])).toBe(degreesOfFreedom)
  })

  it('does not depend on the unit, however small or large', () => {
    const at = (unit: number) =>
      effectiveDegreesOfFreedom([
        { standardUncertainty: 2 * unit, degreesOfFreedom: 4 },
        { standardUncertainty: unit, degreesOfFreedom: null },
      ])!
    // By hand: (4 + 1)² / (16 / 4) = 6.25.
    expect(at(1)).toBeCloseTo(6.25, 12)
    expect(at(1e-120)).toBeCloseTo(6.25, 12)
  })

  it('refuses what is no uncertainty', () => {
    expect(() => effectiveDegreesOfFreedom([{ standardUncertainty: -1, degreesOfFreedom: 5 }])).toThrow(RangeError)
    expect(() => effectiveDegreesOfFreedom([{ standardUncertainty: 1, degreesOfFreedom: 0 }])).toThrow(RangeError)
  })
})
