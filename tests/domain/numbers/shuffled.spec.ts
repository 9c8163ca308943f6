import { expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { shuffled } from '#domain/numbers/shuffled.ts'

it('keeps every item once and leaves the given list as it is', () => {
  const items = [1, 2, 3, 4, 5, 6, 7]
  const mixed = shuffled(items, createRandom(1))
  expect(mixed).not.toEqual(items)
  expect([...mixed].sort()).toEqual([1, 2, 3, 4, 5, 6, 7])
  expect(items).toEqual([1, 2, 3, 4, 5, 6, 7])
})

it('gives the same order for the same seed', () =>
  expect(shuffled(['a', 'b', 'c', 'd'], createRandom(9))).toEqual(shuffled(['a', 'b', 'c', 'd'], createRandom(9))))

it('makes every order as likely as any other', () => {
  const random = createRandom(3)
  const counts = new Map<string, number>()
  for (let i = 0; i < 24_000; i++) {
    const order = shuffled(['a', 'b', 'c', 'd'], random).join('')
    counts.set(order, (counts.get(order) ?? 0) + 1)
  }
  expect(counts.size).toBe(24)
  const chiSquared = [...counts.values()].reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0)
  // R: qchisq(0.9999, 23) = 57.07
  expect(chiSquared).toBeLessThan(57.07)
})
