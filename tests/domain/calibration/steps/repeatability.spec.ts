import { describe, expect, it } from 'vitest'
import { pooledRepeatability, readingSpread } from '#domain/calibration/steps/repeatability.ts'
import { pontius } from '../fit/fixtures/pontius.ts'

describe('repeatability', () => {
  it('is the replication SD of the load cell case study', () => {
    // NIST/SEMATECH e-Handbook 4.6.1: 0.000214726570 with 20 degrees of freedom (from memory); R: anova of lm(y ~ factor(x)).
    const found = pooledRepeatability(
      pontius.map(([y]) => y),
      pontius.map(([, load]) => load),
    )!
    expect(found.degreesOfFreedom).toBe(20)
    expect(found.sdN).toBeCloseTo(0.000214726570317, 13)
  })

  it('is that of a single pair: their distance over the root of two', () => {
    const found = pooledRepeatability([5, 8, 40], [1, 1, 2])!
    expect(found.degreesOfFreedom).toBe(1)
    expect(found.sdN).toBeCloseTo(3 / Math.SQRT2, 12)
  })

  it('is not known without repeats', () => {
    expect(pooledRepeatability([1, 2, 3], [1, 2, 3])).toBeNull()
    expect(() => pooledRepeatability([1], [])).toThrow(RangeError)
  })

  it('of one reading is the larger of the spread of repeats and the spread about the curve', () => {
    const small = { sdN: 0.1, degreesOfFreedom: 8 }
    const large = { sdN: 0.2, degreesOfFreedom: 12 }
    expect(readingSpread(small, large)).toBe(large)
    expect(readingSpread(large, small)).toBe(large)
    const alike = { ...small, degreesOfFreedom: 20 }
    expect(readingSpread(small, alike)).toBe(small)
    expect(readingSpread(small, null)).toBe(small)
    expect(readingSpread(null, small)).toBe(small)
    expect(() => readingSpread(null, null)).toThrow(RangeError)
  })
})
