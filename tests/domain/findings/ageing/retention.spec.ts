import { describe, expect, it } from 'vitest'
import { retentionOf } from '#domain/findings/ageing/retention.ts'
import { handbookGroups, sleep } from '../knownStudies.ts'

describe('retention', () => {
  // Fieller's formula on the groups of NIST/SEMATECH e-Handbook 7.4.7.1 with the variance of the two groups pooled, by an independent
  // computation (no published worked example was found).
  it.each([
    [1, 1.44569288, 1.12325571, 1.90744498],
    [2, 1.60299625, 1.22076874, 2.18503309],
    [3, 1.02996255, 0.77343492, 1.37495058],
  ])('of group %d has the interval of Fieller', (group, ratio, low, high) => {
    const found = retentionOf(handbookGroups[0]!.values, handbookGroups[group]!.values, 0.95)
    expect(found.ratio).toBeCloseTo(ratio, 7)
    expect(found.low).toBeCloseTo(low, 6)
    expect(found.high).toBeCloseTo(high, 6)
    expect(found.bounded).toBe(true)
  })

  it('says that it is unbounded where the first mean may be nothing', () => {
    const found = retentionOf(sleep[0]!.values, sleep[1]!.values, 0.95)
    expect(found).toMatchObject({ low: null, high: null, bounded: false })
    expect(found.ratio).toBeCloseTo(2.33 / 0.75, 9)
  })

  it('has no interval for two blocks, and nothing for none', () => {
    expect(retentionOf([8], [4], 0.95)).toEqual({ ratio: 0.5, low: null, high: null, bounded: null })
    expect(retentionOf([], [4], 0.95)).toEqual({ ratio: null, low: null, high: null, bounded: null })
    expect(retentionOf([-1, 1], [4], 0.95).ratio).toBeNull()
  })
})
