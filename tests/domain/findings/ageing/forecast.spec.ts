import { describe, expect, it } from 'vitest'
import { type AgeingFit, fitAgeing, fitAllAgeing } from '#domain/findings/ageing/ageingFit.ts'
import { forecastAt } from '#domain/findings/ageing/forecast.ts'
import { agedMonths, agedStrengths } from './agedBlocks.ts'

const blocks = agedMonths.map((ageMonths, i) => ({ ageMonths, strengthMPa: agedStrengths[i]!, held: false }))
const terms = { confidence: 0.95, firstAgeMonths: 0, share: 0.8 }
const linear = fitAgeing('linear', blocks) as AgeingFit

describe('a forecast', () => {
  it('of one model is the interval of R predict', () => {
    // R 4.2.2: predict(lm(y ~ t), data.frame(t = 60), interval = "confidence")
    const { meanMPa, lowMPa, highMPa } = forecastAt([{ fit: linear, weight: 1 }], 60, terms)
    expect(meanMPa).toBeCloseTo(5.64367816092, 8)
    expect(lowMPa).toBeCloseTo(4.77391240165, 8)
    expect(highMPa).toBeCloseTo(6.51344392019, 8)
  })

  it('holds the interval of every model that is not ruled out, and none of those that are', () => {
    const fits = fitAllAgeing(blocks).flatMap(({ fit, weight }) =>
      typeof fit === 'string' ? [] : [{ fit, weight: weight! }],
    )
    const all = forecastAt(fits, 120, terms)
    const heaviest = Math.max(...fits.map(({ weight }) => weight))
    for (const one of fits) {
      const alone = forecastAt([one], 120, terms)
      const possible = one.weight >= heaviest * Math.exp(-3.5)
      expect(all.lowMPa <= alone.lowMPa && all.highMPa >= alone.highMPa).toBe(possible)
    }
  })

  it('says how much of the start is left, and how likely it is below a share', () => {
    const { meanMPa, retentionPercent, belowShareProbability } = forecastAt([{ fit: linear, weight: 1 }], 60, terms)
    expect(retentionPercent).toBeCloseTo((100 * meanMPa) / linear.parameters[0]!, 10)
    expect(belowShareProbability).toBeGreaterThan(0.99)
    expect(forecastAt([{ fit: linear, weight: 1 }], 6, terms).belowShareProbability).toBeLessThan(0.01)
  })

  it('gives the least and the largest chance among the models that are not ruled out', () => {
    const fits = fitAllAgeing(blocks).flatMap(({ fit, weight }) =>
      typeof fit === 'string' ? [] : [{ fit, weight: weight! }],
    )
    const heaviest = Math.max(...fits.map(({ weight }) => weight))
    const possible = fits.filter(({ weight }) => weight >= heaviest * Math.exp(-3.5))
    const alone = possible.map((one) => forecastAt([one], 18, terms).belowShareProbability!)
    const { belowShareProbability, belowShareRange } = forecastAt(fits, 18, terms)
    expect(belowShareRange).toEqual([Math.min(...alone), Math.max(...alone)])
    expect(belowShareRange![0]).toBeLessThan(belowShareProbability!)
    expect(belowShareRange![1]).toBeGreaterThan(belowShareProbability!)
  })

  it('refuses to do without a model', () => {
    expect(() => forecastAt([], 60, terms)).toThrow(RangeError)
  })
})
