import { describe, expect, it } from 'vitest'
import { shrunkenMeans } from '#domain/findings/shrunkenMeans.ts'

// Efron and Morris, Journal of the American Statistical Association 70 (1975) 311: hits in the first 45 times at bat of 18 players, as R's
// package pscl 1.5.5 has them (data EfronMorris), on the scale sqrt(45) asin(2 p - 1), whose variance is 1. The sum of squares 18.96
// and the shrinkage 0.791 of the paper are from memory; R finds 18.968 from the averages as they are printed, to three digits.
const hits = [18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7]
const players = hits.map((count) => ({ mean: Math.sqrt(45) * Math.asin((2 * count) / 45 - 1), variance: 1 }))

describe('means drawn towards each other', () => {
  it('draws the players of 1970 as far as Efron and Morris', () => {
    const { means, between } = shrunkenMeans(players, 0.95, Number.POSITIVE_INFINITY)
    expect(means[0]!.shrinkage).toBeCloseTo(0.791, 2)
    expect(means[0]!.shrinkage).toBeCloseTo(15 / 18.96, 2)
    expect(between).toBeCloseTo(18.96 / 17 - 1, 2)
  })

  it('draws the averages themselves by the factor that their second paper prints: 0.212 is left', () => {
    // Efron and Morris, Scientific American 236 (1977) 119: c = 1 - (k - 3) s2 / sum of squares, s2 = p (1 - p) / 45 at the common p.
    const common = hits.reduce((sum, count) => sum + count, 0) / 45 / 18
    const averages = hits.map((count) => ({ mean: count / 45, variance: (common * (1 - common)) / 45 }))
    const { means } = shrunkenMeans(averages, 0.95, Number.POSITIVE_INFINITY)
    expect(1 - means[0]!.shrinkage).toBeCloseTo(0.212, 3)
  })

  it('finds the spread between unequally noisy groups that R metafor finds', () => {
    // metafor 3.8.1: rma(yi, vi, method = "PM"), Paule and Mandel, whose equation this is; means by the factor (k - 3)/(k - 1) in R.
    const yi = [10.2, 11.9, 9.4, 13.1, 8.8, 10.9, 12.4]
    const vi = [0.12, 0.4, 0.05, 0.9, 0.2, 0.15, 0.6]
    const expected = [
      10.2222365399702, 11.7848636700537, 9.4219406366959, 12.6444454318002, 8.9167587541966, 10.8963834515976,
      12.1661271312039,
    ]
    const { means, between } = shrunkenMeans(
      yi.map((mean, i) => ({ mean, variance: vi[i]! })),
      0.95,
      Number.POSITIVE_INFINITY,
    )
    expect(between).toBeCloseTo(2.1049779245363, 10)
    for (const [i, { mean }] of means.entries()) expect(mean).toBeCloseTo(expected[i]!, 10)
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
