import { describe, expect, it } from 'vitest'
import { dunnHolm, gamesHowell, tukeyKramer } from '#domain/findings/compare/pairs.ts'
import { groupsOf, handbookGroups, sleep } from '../knownStudies.ts'

describe('Tukey and Kramer', () => {
  // NIST/SEMATECH e-Handbook 7.4.7.1, digits and p values by R TukeyHSD, which takes the later group less the earlier.
  it.each([
    ['1', '2', -4.467368, -0.292632, 0.022793],
    ['1', '3', -5.307368, -1.132632, 0.002211],
    ['1', '4', -2.247368, 1.927368, 0.996121],
    ['2', '4', 0.132632, 4.307368, 0.035154],
    ['3', '4', 0.972632, 5.147368, 0.003451],
  ])('compare %s with %s as the handbook does', (a, b, low, high, p) => {
    const pair = tukeyKramer(handbookGroups, 0.95).find((one) => one.a === a && one.b === b)!
    expect(pair.lowMPa).toBeCloseTo(low, 6)
    expect(pair.highMPa).toBeCloseTo(high, 6)
    expect(pair.p).toBeCloseTo(p, 6)
    expect(Math.sign(pair.statistic!)).toBe(Math.sign(pair.differenceMPa!))
  })

  it('have no pair without a spread or another group', () => {
    expect(tukeyKramer(groupsOf([1], [2]), 0.95)).toEqual([])
    expect(tukeyKramer(groupsOf([1, 2]), 0.95)).toEqual([])
    expect(tukeyKramer(groupsOf([2, 2], [3, 3]), 0.95)[0]).toMatchObject({
      differenceMPa: -1,
      statistic: null,
      p: null,
    })
  })
})

describe('Games and Howell', () => {
  it('compare as scipy does', () => {
    // scipy 1.17.1: stats.tukey_hsd(..., equal_var=False).pvalue[0]
    const ps = gamesHowell(handbookGroups, 0.95)
      .slice(0, 3)
      .map(({ p }) => p!)
    for (const [i, p] of [0.0384593302219, 0.0165761235568, 0.994686612832].entries()) expect(ps[i]).toBeCloseTo(p, 8)
  })

  it('of two groups are Welch', () => {
    // R t.test(sleep): p 0.0793941, interval -3.3654832 to 0.2054832, df 17.7764735
    const [pair] = gamesHowell(sleep, 0.95)
    expect(pair!.p).toBeCloseTo(0.0793941, 7)
    expect(pair!.lowMPa).toBeCloseTo(-3.3654832, 6)
    expect(pair!.highMPa).toBeCloseTo(0.2054832, 6)
    expect(pair!.df).toBeCloseTo(17.7764735, 6)
  })

  it('leave a group of one block out', () => {
    expect(gamesHowell(groupsOf([1, 2], [3], [4, 6]), 0.95).map(({ a, b }) => [a, b])).toEqual([['1', '3']])
  })
})

describe('Dunn with Holm', () => {
  it('never let an adjusted p fall below one before it, nor above 1', () => {
    const pairs = dunnHolm(handbookGroups)
    const raw = pairs.map(({ statistic }) => Math.abs(statistic!))
    const ordered = pairs.map(({ p }, i) => ({ p: p!, z: raw[i]! })).sort((one, other) => other.z - one.z)
    for (const [i, { p }] of ordered.entries()) {
      expect(p).toBeLessThanOrEqual(1)
      if (i > 0) expect(p).toBeGreaterThanOrEqual(ordered[i - 1]!.p)
    }
    // The smallest of six: two-sided normal p of z = 2.9153, times six.
    expect(ordered[0]!.p).toBeCloseTo(6 * 0.003553, 4)
  })

  it('say nothing of strengths, and nothing at all where all are equal', () => {
    expect(dunnHolm(handbookGroups)[0]).toMatchObject({ differenceMPa: null, lowMPa: null, df: null })
    expect(dunnHolm(groupsOf([1, 1], [1, 1]))[0]).toMatchObject({ statistic: null, p: null })
    expect(dunnHolm(groupsOf([1, 2]))).toEqual([])
  })
})
