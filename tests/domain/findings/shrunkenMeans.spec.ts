import { describe, expect, it } from 'vitest'
import { shrunkenMeans } from '#domain/findings/shrunkenMeans.ts'

// Efron and Morris, Journal of the American Statistical Association 70 (1975) 311: hits in the first 45 times at bat of 18 players, on
// the scale sqrt(45) asin(2 p - 1), whose variance is 1 (table and results from memory: sum of squares 18.96, shrinkage 0.791).
const hits = [18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7]
const players = hits.map((count) => ({ mean: Math.sqrt(45) * Math.asin((2 * count) / 45 - 1), variance: 1 }))

describe('means drawn towards each other', () => {
  it('draws the players of 1970 as far as Efron and Morris', () => {
    const { means, between } = shrunkenMeans(players, 0.95, Number.POSITIVE_INFINITY)
    expect(means[0]!.shrinkage).toBeCloseTo(0.791, 2)
    expect(means[0]!.shrinkage).toBeCloseTo(15 / 18.96, 2)
    expect(between).toBeCloseTo(18.96 / 17 - 1, 2)
  })

  it('keeps the order of equally noisy means, and their common mean', () => {
    const { means } = shrunkenMeans(players, 0.95, 40)
    const sum = (values: number[]) => values.reduce((all, value) => all + value, 0)
    expect(sum(means.map(({ mean }) => mean))).toBeCloseTo(sum(players.map(({ mean }) => mean)), 9)
    for (const [i, { mean, low, high }] of means.entries()) {
      expect(low).toBeLessThan(mean)
      expect(high).toBeGreaterThan(mean)
      if (i > 0) expect(mean).toBeLessThanOrEqual(means[i - 1]!.mean + 1e-12)
    }
  })

  it('draws a noisy mean farther than a sure one', () => {
    const given = [1, 2, 3, 4, 5].map((mean, i) => ({ mean, variance: i === 4 ? 1 : 0.01 }))
    const { means } = shrunkenMeans(given, 0.95, 20)
    expect(means[4]!.shrinkage).toBeGreaterThan(3 * means[0]!.shrinkage)
  })

  it('draws means that differ by less than their noise to one, as far as k groups allow', () => {
    const { means, between } = shrunkenMeans(
      [1, 1.01, 0.99, 1, 1.02].map((mean) => ({ mean, variance: 1 })),
      0.95,
      20,
    )
    expect(between).toBe(0)
    expect(means[0]!.shrinkage).toBeCloseTo(2 / 4, 12)
  })

  it('refuses three groups, and a mean without noise', () => {
    expect(() => shrunkenMeans(players.slice(0, 3), 0.95, 20)).toThrow(RangeError)
    expect(() => shrunkenMeans([...players, { mean: 1, variance: 0 }], 0.95, 20)).toThrow(RangeError)
  })
})
