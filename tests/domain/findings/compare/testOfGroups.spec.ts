import { expect, it } from 'vitest'
import { noTest, testOrNone } from '#domain/findings/compare/testOfGroups.ts'

it('is none where the statistic is no number', () => {
  const test = { df1: 1, df2: 2, p: 0.5 }
  expect(testOrNone({ ...test, statistic: 3 })).toEqual({ ...test, statistic: 3 })
  for (const statistic of [Number.NaN, Number.POSITIVE_INFINITY, null])
    expect(testOrNone({ ...test, statistic })).toEqual(noTest)
})
