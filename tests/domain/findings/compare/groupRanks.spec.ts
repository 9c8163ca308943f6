import { expect, it } from 'vitest'
import { groupRanks } from '#domain/findings/compare/groupRanks.ts'
import { groupsOf } from '../knownStudies.ts'

it('ranks the values of all groups together, without the groups that have none', () => {
  // R: rank(c(1, 2, 2, 5)) is 1, 2.5, 2.5, 4; two equal values make 8 - 2
  const { n, tieSum, groups } = groupRanks(groupsOf([2, 1], [], [5, 2]))
  expect([n, tieSum]).toEqual([4, 6])
  expect(groups).toEqual([
    { group: '1', n: 2, meanRank: 1.75 },
    { group: '3', n: 2, meanRank: 3.25 },
  ])
  expect(groupRanks([])).toEqual({ n: 0, tieSum: 0, groups: [] })
})
