import { describe, expect, it } from 'vitest'
import { againstReference } from '#domain/findings/compare/againstReference.ts'
import { groupsOf } from '../knownStudies.ts'

// Dunnett, Journal of the American Statistical Association 50 (1955) 1096: blood counts, the control first.
const blood = groupsOf([7.4, 8.5, 7.2, 8.24, 9.84, 8.32], [9.76, 8.8, 7.68, 9.36], [12.8, 9.68, 12.16, 9.2, 10.55])

describe('groups against a reference', () => {
  it('have the t, p and intervals of the blood counts', () => {
    // R 4.2.2 multcomp and scipy 1.17.1 stats.dunnett: t, p and the two-sided 95 % intervals
    const expected = [
      ['2', 0.85703, 0.6201, -1.2564, 2.5564],
      ['3', 3.69375, 0.0058, 0.8396, 4.4164],
    ] as const
    const found = againstReference(blood, '1', 0.95)
    for (const [i, [group, t, p, low, high]] of expected.entries()) {
      expect(found[i]!.group).toBe(group)
      expect(found[i]!.statistic).toBeCloseTo(t, 5)
      expect(found[i]!.p).toBeCloseTo(p, 4)
      expect(found[i]!.lowMPa).toBeCloseTo(low, 3)
      expect(found[i]!.highMPa).toBeCloseTo(high, 3)
    }
  })

  it('are none where the reference has no blocks or is alone', () => {
    expect(againstReference(blood, '9', 0.95)).toEqual([])
    expect(againstReference(groupsOf([1, 2]), '1', 0.95)).toEqual([])
    expect(againstReference(groupsOf([1], [2]), '1', 0.95)).toEqual([])
  })

  it('have a difference alone where nothing varies', () => {
    expect(againstReference(groupsOf([1, 1], [3, 3]), '1', 0.95)).toEqual([
      { group: '2', differenceMPa: 2, lowMPa: null, highMPa: null, statistic: null, p: null },
    ])
  })
})
