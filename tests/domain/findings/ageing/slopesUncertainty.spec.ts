import { describe, expect, it } from 'vitest'
import { slopesUncertainty } from '#domain/findings/ageing/slopesUncertainty.ts'

// Degrees of freedom against R pbkrtest, of 200 random studies: tests/reference/findings/mixedModels.spec.ts.

describe('how sure slopes are that share a spread', () => {
  it('is Student t with one degree of freedom less than series where blocks say everything of each slope', () => {
    // The mean of k slopes of equal weight, with their spread from the k alone.
    const { commonDf, ofCommon } = slopesUncertainty([7, 7, 7, 7, 7], 1e9, 1e6)
    expect(commonDf).toBeCloseTo(4, 6)
    expect(ofCommon).toBeCloseTo((1e6 + 1 / 7) / 5, 3)
  })

  it('holds no more certainty than few series give where their slopes seem not to spread', () => {
    expect(slopesUncertainty([7, 7, 7], 200, 0).commonDf).toBeCloseTo(2, 1)
    expect(slopesUncertainty(new Array<number>(60).fill(7), 200, 0).commonDf).toBeGreaterThan(50)
  })

  it('is of each slope between what the others leave open and what it shows alone', () => {
    const xx = [1, 5, 20, 80]
    for (const ratio of [0, 0.01, 0.1, 1, 100])
      for (const [i, error] of slopesUncertainty(xx, 100, ratio).ofSeries.entries()) {
        const naive = ratio / (1 + ratio * xx[i]!)
        expect(error).toBeGreaterThan(naive)
        expect(error).toBeLessThanOrEqual(1 / xx[i]!)
      }
  })
})
