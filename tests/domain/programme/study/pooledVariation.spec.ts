import { expect, it } from 'vitest'
import { pooledVariation } from '#domain/programme/study/pooledVariation.ts'

const groups = [
  [9.8, 10.4, 11.1, 10.2],
  [5.1, 6.2, 5.5],
  [12.9, 13.4],
]

it('is that of R, each group weighing by its degrees of freedom', () => {
  // R 4.2.2: cv2 <- sapply(g, function(x) (sd(x) / mean(x))^2); 100 * sqrt(weighted.mean(cv2, lengths(g) - 1))
  expect(pooledVariation(groups)).toEqual({ cvPercent: expect.closeTo(6.92077833407542, 10), groups: 3, blocks: 9 })
})

it('leaves out groups of one block, which have no spread', () => {
  expect(pooledVariation([...groups, [7.7]])).toEqual(pooledVariation(groups))
})

it('is none without a group of two, or without any spread', () => {
  expect(pooledVariation([[7], [8]])).toBeNull()
  expect(pooledVariation([])).toBeNull()
  expect(pooledVariation([[7, 7]])).toBeNull()
})
