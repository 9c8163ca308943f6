import { describe, expect, it } from 'vitest'
import { jonckheere, mannKendall } from '#domain/findings/ageing/trends.ts'

const series = (ages: number[], strengths: number[]) =>
  ages.map((ageMonths, i) => ({ ageMonths, strengthMPa: strengths[i]! }))
// EPA QA/G-9S, p. 109 (as a public help page quotes it).
const epa = [10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15]

describe('Mann and Kendall', () => {
  it('have the S, variance and Z of the EPA, and the slope of Sen', () => {
    const { statistic, z, p, slopeMPaPerYear } = mannKendall(
      series(
        epa.map((_, i) => i + 1),
        epa,
      ),
    )
    expect(statistic).toBe(22)
    expect(z).toBeCloseTo(1.6849498, 6)
    expect(p).toBeCloseTo(0.092, 4)
    expect(slopeMPaPerYear).toBeCloseTo(12, 12)
  })

  it('take ties of ages into the variance', () => {
    // R 4.2.2: cor.test(age, strength, method = "kendall", exact = FALSE)$statistic, which has no continuity correction.
    const blocks = series([0, 0, 6, 6, 6, 12, 12, 24, 24, 24, 36], epa)
    const { statistic, z } = mannKendall(blocks)
    expect((z! * statistic) / (statistic - 1)).toBeCloseTo(1.814217787, 8)
  })

  it('say nothing where all strengths or all ages are equal', () => {
    expect(mannKendall(series([0, 6, 12], [5, 5, 5]))).toMatchObject({
      statistic: 0,
      z: null,
      p: null,
      slopeMPaPerYear: 0,
    })
    expect(mannKendall(series([6, 6], [5, 7]))).toMatchObject({ z: null, slopeMPaPerYear: null })
  })
})

describe('Jonckheere', () => {
  it('counts pairs in which the later block is stronger, ties half', () => {
    expect(jonckheere(series([0, 0, 6, 6], [1, 3, 2, 3])).statistic).toBe(2.5)
  })

  it('has z of the pairs among ages without a continuity correction', () => {
    const blocks = series([0, 0, 6, 6, 6, 12, 12, 24, 24, 24, 36], epa)
    expect(jonckheere(blocks).z).toBeCloseTo(1.814217787, 8)
  })

  it('rises to the number of pairs where everything rises', () => {
    expect(jonckheere(series([0, 0, 6, 12], [1, 2, 3, 4])).statistic).toBe(5)
  })
})
