import { describe, expect, it } from 'vitest'
import { slopesTogether } from '#domain/findings/ageing/slopesTogether.ts'

// Against R lme4: tests/reference/findings/mixedModels.spec.ts.

const series = (group: string, percentPerYear: number, wobble = 0.02) => ({
  group,
  blocks: [0, 12, 24, 36].flatMap((ageMonths) =>
    [1, -1].map((sign) => ({
      ageMonths,
      strengthMPa: 10 * (1 + percentPerYear / 100) ** (ageMonths / 12) * Math.exp(sign * wobble),
    })),
  ),
})

describe('slopes of several series together', () => {
  it('stay their own where single blocks hardly spread', () => {
    const found = slopesTogether([series('a', -1, 1e-4), series('b', -5, 1e-4), series('c', 2, 1e-4)], 0.95)!
    expect(found.series.map(({ percentPerYear }) => percentPerYear)).toEqual([
      expect.closeTo(-1, 3),
      expect.closeTo(-5, 3),
      expect.closeTo(2, 3),
    ])
  })

  it('become the common one where they differ by less than noise', () => {
    const found = slopesTogether([series('a', -1, 0.3), series('b', -1.5, 0.3), series('c', -2, 0.3)], 0.95)!
    expect(found.spreadPercentPerYear).toBe(0)
    expect(found.series.map(({ shrinkage }) => shrinkage)).toEqual([1, 1, 1])
    for (const { percentPerYear } of found.series) expect(percentPerYear).toBeCloseTo(found.commonPercentPerYear, 12)
  })

  it('have a common one no surer than three series that differ can make it', () => {
    // Slopes of logarithms known nearly exactly: their mean with Student's t of 2 degrees of freedom, 4.302653 in any table.
    const logs = [-1, -5, 2].map((percent) => Math.log1p(percent / 100))
    const mean = (logs[0]! + logs[1]! + logs[2]!) / 3
    const se = Math.sqrt(logs.reduce((sum, one) => sum + (one - mean) ** 2, 0) / 2 / 3)
    const found = slopesTogether([series('a', -1, 1e-5), series('b', -5, 1e-5), series('c', 2, 1e-5)], 0.95)!
    expect(found.commonLowPercentPerYear).toBeCloseTo(100 * Math.expm1(mean - 4.302653 * se), 2)
    expect(found.commonHighPercentPerYear).toBeCloseTo(100 * Math.expm1(mean + 4.302653 * se), 2)
  })

  it('say nothing where every series has two blocks alone, which spread about no line', () => {
    const two = (group: string, later: number) => ({
      group,
      blocks: [0, 12].map((ageMonths, i) => ({ ageMonths, strengthMPa: i === 0 ? 10 : later })),
    })
    expect(slopesTogether([two('a', 9), two('b', 8), two('c', 9.5)], 0.95)).toBeNull()
  })

  it('leave out a series of one age, and say nothing of fewer than three', () => {
    const one = { group: 'd', blocks: [10, 11, 12].map((strengthMPa) => ({ ageMonths: 0, strengthMPa })) }
    expect(slopesTogether([series('a', -1), series('b', -2), one], 0.95)).toBeNull()
    expect(slopesTogether([series('a', -1), series('b', -2), series('c', 0), one], 0.95)!.series).toHaveLength(3)
  })
})
