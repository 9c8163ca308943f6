import { describe, expect, it } from 'vitest'
import { normalProbability, normalQuantile } from '#domain/numbers/distributions/normal.ts'

describe('normal distribution', () => {
  it('agrees with R pnorm', () => {
    // R 4.2.2: pnorm(-6), relative 1e-12; pnorm(1.2), absolute 1e-14
    expect(Math.abs(normalProbability(-6) / 9.865876450376981e-10 - 1)).toBeLessThan(1e-12)
    expect(Math.abs(normalProbability(1.2) - 0.8849303297782918)).toBeLessThan(1e-14)
    expect(normalProbability(0)).toBeCloseTo(0.5, 15)
  })

  // R: qnorm(.9); qnorm(1e-12); qnorm(.99). Absolute tolerance 1e-12.
  it.each([
    [0.9, 1.281551565544601],
    [1e-12, -7.034483825301132],
    [0.99, 2.326347874040841],
  ])('quantile %d agrees with R qnorm', (p, expected) => {
    expect(Math.abs(normalQuantile(p) - expected)).toBeLessThan(1e-12)
  })

  it('refuses what is no probability', () => {
    expect(() => normalQuantile(2)).toThrow(RangeError)
  })
})
