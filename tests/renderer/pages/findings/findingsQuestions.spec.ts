import { expect, test } from 'vitest'
import { agesOf, ageToShow, inOrder } from '#renderer/pages/findings/findingsQuestions.ts'

const at = (group: string, ageMonths: number | null) => ({ group, ageMonths })

test('lists ages youngest first, an unknown one before them', () => {
  expect(agesOf([at('a', 12), at('a', null), at('b', 0), at('b', 12)])).toEqual([null, 0, 12])
})

test('looks at the youngest age of several groups until one is chosen', () => {
  const blocks = [at('a', 0), at('a', 6), at('b', 6), at('b', 12)]
  expect(ageToShow(blocks, '')).toBe(6)
  expect(ageToShow(blocks, '12')).toBe(12)
  expect(ageToShow(blocks, '99')).toBe(6)
})

test('looks at the youngest age where one group has blocks, and at none without blocks', () => {
  expect(ageToShow([at('a', 6), at('a', 3)], '')).toBe(3)
  expect(ageToShow([], '')).toBeUndefined()
})

test('puts groups in the order of their means, without those that have none', () => {
  const means: Record<string, number | null> = { a: 5, b: null, c: 9 }
  expect(inOrder(['a', 'b', 'c'], (group) => means[group]!)).toEqual(['c', 'a'])
})
