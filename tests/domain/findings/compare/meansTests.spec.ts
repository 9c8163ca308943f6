import { describe, expect, it } from 'vitest'
import { kruskalWallisTest, oneWayTest, welchTest } from '#domain/findings/compare/meansTests.ts'
import { noTest } from '#domain/findings/compare/testOfGroups.ts'
import { groupsOf, handbookGroups, sleep } from '../knownStudies.ts'

describe('one-way analysis of variance', () => {
  it('of the handbook example has its F', () => {
    // NIST/SEMATECH e-Handbook 7.4.7.1; R: p 0.000684
    const { statistic, df1, df2, p } = oneWayTest(handbookGroups)
    expect([df1, df2]).toEqual([3, 16])
    expect(statistic).toBeCloseTo(9.72384, 5)
    expect(p).toBeCloseTo(0.000684, 6)
  })

  it('loses no digits to a large part that all values share', () => {
    // As NIST StRD SmLs04 to 09 are made: the same values with a constant in front of them.
    const far = handbookGroups.map(({ group, values }) => ({ group, values: values.map((value) => value + 1e9) }))
    expect(oneWayTest(far).statistic).toBeCloseTo(9.72384, 4)
  })

  it('takes a group of one block along', () => {
    expect(oneWayTest(groupsOf([1, 2, 3], [9]))).toMatchObject({ df1: 1, df2: 2 })
  })
})

describe('Welch', () => {
  it('of two groups is the square of his t', () => {
    // R sleep: t -1.8608135, df 17.7764735, p 0.0793941
    const { statistic, df1, df2, p } = welchTest(sleep)
    expect(df1).toBe(1)
    expect(statistic).toBeCloseTo(1.8608135 ** 2, 6)
    expect(df2).toBeCloseTo(17.7764735, 6)
    expect(p).toBeCloseTo(0.0793941, 7)
  })

  it('is none where a group has no spread, and leaves a group of one out', () => {
    expect(welchTest(groupsOf([1, 1, 1], [2, 3, 4]))).toEqual(noTest)
    expect(welchTest([...sleep, ...groupsOf([5])]).df1).toBe(1)
  })
})

describe('Kruskal and Wallis', () => {
  it('have the H of Hollander and Wolfe', () => {
    // Hollander and Wolfe (1973), p. 116, in R's help of kruskal.test
    const groups = groupsOf([2.9, 3.0, 2.5, 2.6, 3.2], [3.8, 2.7, 4.0, 2.4], [2.8, 3.4, 3.7, 2.2, 2.0])
    const { statistic, df1, df2, p } = kruskalWallisTest(groups)
    expect([df1, df2]).toEqual([2, null])
    expect(statistic).toBeCloseTo(0.7714286, 7)
    expect(p).toBeCloseTo(0.6799648, 7)
  })

  it('correct for ties', () => {
    // R kruskal.test: 4.154749, p 0.125259 (without the correction 4.0987)
    const groups = groupsOf(
      [24, 32, 39, 34, 30, 40, 36, 38],
      [28, 31, 35, 22, 38, 28, 32, 28],
      [34, 31, 28, 24, 31, 26, 28, 34],
    )
    expect(kruskalWallisTest(groups).statistic).toBeCloseTo(4.154749, 6)
  })
})

it.each([
  ['one-way', oneWayTest],
  ['Welch', welchTest],
  ['Kruskal-Wallis', kruskalWallisTest],
])('%s is none for a single group, or equal values', (_name, test) => {
  expect(test(groupsOf([1, 2, 3]))).toEqual(noTest)
  expect(test(groupsOf([2, 2], [2, 2]))).toEqual(noTest)
  expect(test(groupsOf([1, 2, 3], []))).toEqual(noTest)
})
