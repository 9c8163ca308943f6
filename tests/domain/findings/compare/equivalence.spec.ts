import { expect, it } from 'vitest'
import { equivalentPairs } from '#domain/findings/compare/equivalence.ts'
import { groupsOf, handbookGroups } from '../knownStudies.ts'

it('has the p values of two one-sided Welch tests', () => {
  // R 4.2.2: t.test(a, b, mu = -m, alternative = "greater"), t.test(a, b, mu = m, alternative = "less"), m = 0.2 mean(b)
  const pair = equivalentPairs([handbookGroups[0]!, handbookGroups[3]!], 20, 0.95)[0]!
  expect(pair.pLower).toBeCloseTo(0.0977725275855, 8)
  expect(pair.pUpper).toBeCloseTo(0.0475810966144, 8)
  expect(pair.p).toBe(pair.pLower)
  expect(pair.equivalent).toBe(false)
})

it('calls alike groups equivalent within a wide margin, and at the given confidence', () => {
  const groups = groupsOf([10, 10.1, 9.9, 10.05], [10.02, 9.98, 10.1, 9.95])
  expect(equivalentPairs(groups, 10, 0.95)[0]!.equivalent).toBe(true)
  expect(equivalentPairs(groups, 10, 0.999999)[0]!.equivalent).toBe(false)
})

it('leaves groups of one out, and says nothing without spread', () => {
  expect(equivalentPairs(groupsOf([1], [2, 3]), 10, 0.95)).toEqual([])
  expect(equivalentPairs(groupsOf([2, 2], [2, 2]), 10, 0.95)[0]).toMatchObject({ p: null, equivalent: null })
})
