import { expect, it } from 'vitest'
import { bartlettTest, brownForsytheTest, leveneTest } from '#domain/findings/compare/spreadTests.ts'
import { noTest } from '#domain/findings/compare/testOfGroups.ts'
import { gears, groupsOf } from '../knownStudies.ts'

// NIST/SEMATECH e-Handbook 1.3.5.7 and 1.3.5.10 on the gears: Bartlett 20.785873 (p 0.013636), Brown-Forsythe 1.705910 (p 0.0991);
// Levene with means by scipy 1.17.1: 2.1594598565 (p 0.0322).
it.each([
  ['Bartlett', bartlettTest, 20.785873, null, 0.013636],
  ['Brown-Forsythe', brownForsytheTest, 1.7059176, 90, 0.0991],
  ['Levene', leveneTest, 2.1594598565, 90, 0.0322],
] as const)('%s of the gears is that of the handbook', (_name, test, statistic, df2, p) => {
  const found = test(gears)
  expect([found.df1, found.df2]).toEqual([9, df2])
  expect(found.statistic).toBeCloseTo(statistic, 6)
  expect(found.p).toBeCloseTo(p, 4)
})

it.each([
  ['Bartlett', bartlettTest],
  ['Brown-Forsythe', brownForsytheTest],
  ['Levene', leveneTest],
])('%s leaves a group of one block out', (_name, test) => {
  expect(test([...gears, ...groupsOf([1])])).toEqual(test(gears))
  expect(test(groupsOf([1, 2], [3]))).toEqual(noTest)
})

it('is none for Bartlett where a group has no spread', () => {
  expect(bartlettTest(groupsOf([1, 1], [1, 2]))).toEqual(noTest)
})

it.each([
  ['Brown-Forsythe', brownForsytheTest],
  ['Levene', leveneTest],
])('%s is none for groups of two, whose distances differ by rounding alone', (_name, test) => {
  const pairs = groupsOf([15.9, 16.1], [8.3, 8.4], [10.7, 11.9])
  const distances = [15.9 - 16, 16.1 - 16].map(Math.abs)
  expect(distances[0]).not.toBe(distances[1])
  expect(test(pairs)).toEqual(noTest)
})
