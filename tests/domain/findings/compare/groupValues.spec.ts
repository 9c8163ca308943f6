import { expect, it } from 'vitest'
import { welchDifference, withinGroups, withMoments } from '#domain/findings/compare/groupValues.ts'
import { groupsOf, handbookGroups, sleep } from '../knownStudies.ts'

it('leaves out groups with fewer blocks than asked for, and those without any', () => {
  const names = (least: number) => withMoments(groupsOf([1, 2], [3], []), least).map(({ group }) => group)
  expect([names(0), names(1), names(2)]).toEqual([['1', '2'], ['1', '2'], ['1']])
})

it('has the mean square within the groups of the handbook', () => {
  // NIST/SEMATECH e-Handbook 7.4.7.1: 1.331 with 16 degrees of freedom.
  const { df, variance } = withinGroups(withMoments(handbookGroups, 1))
  expect(df).toBe(16)
  expect(variance).toBeCloseTo(1.33075, 10)
})

it('has the standard error and degrees of freedom of Welch for the sleep data', () => {
  // R t.test(sleep): difference -1.58, t -1.8608135, df 17.7764735
  const [a, b] = withMoments(sleep, 2)
  const { variance, df } = welchDifference(a!, b!)
  expect(-1.58 / Math.sqrt(variance)).toBeCloseTo(-1.8608135, 7)
  expect(df).toBeCloseTo(17.7764735, 7)
})
