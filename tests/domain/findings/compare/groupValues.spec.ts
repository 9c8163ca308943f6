import { expect, it } from 'vitest'
import { withinGroups, withMoments } from '#domain/findings/compare/groupValues.ts'
import { groupsOf, handbookGroups } from '../knownStudies.ts'

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
