import { describe, expect, it } from 'vitest'
import { bestVarianceRatio } from '#domain/numbers/varianceRatio.ts'

describe('the best ratio of two variances', () => {
  it.each([1e-6, 0.03, 1, 250])('is found at %d', (truth) => {
    expect(bestVarianceRatio((ratio) => (Math.log(ratio + 1e-300) - Math.log(truth)) ** 2)).toBeCloseTo(truth, 5)
  })

  it('is 0 where the deviance only rises', () => {
    expect(bestVarianceRatio((ratio) => Math.log1p(ratio))).toBe(0)
  })

  it('is the deeper of two valleys', () => {
    const valleys = (ratio: number) =>
      Math.min((Math.log(ratio + 1e-300) - 2) ** 2 - 1, (Math.log(ratio + 1e-300) + 5) ** 2 - 3)
    expect(Math.log(bestVarianceRatio(valleys))).toBeCloseTo(-5, 6)
  })
})
