import { describe, expect, it } from 'vitest'
import { rankIntervals } from '#domain/findings/rankIntervals.ts'
import { normalProbability } from '#domain/numbers/distributions/normal.ts'
import { createRandom } from '#domain/numbers/random.ts'

const terms = { confidence: 0.95, draws: 20_000, seed: 1 }

describe('ranks', () => {
  it('of groups far apart are certain', () => {
    const found = rankIntervals(
      [
        [1, 1.1, 1.05, 1.02, 1.08],
        [9, 9.1, 9.05, 9.02, 9.08],
        [5, 5.1, 5.05, 5.02, 5.08],
      ],
      terms,
    )
    expect(found).toEqual([
      { rank: 3, low: 3, high: 3, firstShare: 0 },
      { rank: 1, low: 1, high: 1, firstShare: 1 },
      { rank: 2, low: 2, high: 2, firstShare: 0 },
    ])
  })

  it('of equal groups range over all places, and the first place is shared', () => {
    const found = rankIntervals(
      [
        [1, 2, 3],
        [1, 2, 3],
        [1, 2, 3],
      ],
      terms,
    )
    for (const { low, high, firstShare } of found) {
      expect([low, high]).toEqual([1, 3])
      expect(firstShare).toBeCloseTo(1 / 3, 1)
    }
    expect(found.reduce((sum, { firstShare }) => sum + firstShare, 0)).toBeCloseTo(1, 9)
  })

  it('of groups without any spread that are equal share their places', () => {
    expect(
      rankIntervals(
        [
          [5, 5],
          [5, 5, 5],
          [3, 3],
        ],
        terms,
      ),
    ).toEqual([
      { rank: 1, low: 1, high: 2, firstShare: expect.closeTo(0.5, 9) },
      { rank: 1, low: 1, high: 2, firstShare: expect.closeTo(0.5, 9) },
      { rank: 3, low: 3, high: 3, firstShare: 0 },
    ])
  })

  it('comes first as often as the spread of a difference of means says', () => {
    // Many blocks, so that the resampled means are normal: P(first) = Phi(d / sqrt(2 s^2 / n)).
    const blocks = Array.from({ length: 200 }, (_, i) => Math.sin(i * 12.9898))
    const mean = blocks.reduce((sum, value) => sum + value, 0) / 200
    const variance = blocks.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 199
    const found = rankIntervals([blocks, blocks.map((value) => value + 0.05)], terms)
    expect(found[1]!.firstShare).toBeCloseTo(normalProbability(0.05 / Math.sqrt((2 * variance) / 200)), 2)
  })

  it('are called certain of two groups of so few blocks no oftener than a t test would be wrong', () => {
    // Both from one normal distribution: without regard to how badly two blocks show their spread, one in five is called certain.
    const random = createRandom(5)
    const drawn = (n: number) => Array.from({ length: n }, () => random.normal())
    for (const n of [2, 4]) {
      const studies = Array.from({ length: 300 }, (_, study) =>
        rankIntervals([drawn(n), drawn(n)], { confidence: 0.95, draws: 400, seed: study }),
      )
      const certain = studies.filter((found) => found.some(({ high }) => high === 1)).length
      // Three standard errors above 5 %
      expect(certain / studies.length).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / studies.length))
    }
  })

  it('are the same for the same seed and refuse a group of one', () => {
    const groups = [
      [1, 2, 3],
      [1.5, 2.5, 3.5],
    ]
    expect(rankIntervals(groups, terms)).toEqual(rankIntervals(groups, terms))
    expect(rankIntervals(groups, terms)).not.toEqual(rankIntervals(groups, { ...terms, seed: 2 }))
    expect(() => rankIntervals([[1], [2, 3]], terms)).toThrow(RangeError)
  })
})
