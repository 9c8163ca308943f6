import { expect, it } from 'vitest'
import { findExtremes } from '#domain/numbers/extremes.ts'
import { createRandom } from '#domain/numbers/random.ts'

function extremesOf(values: readonly number[], from = 0, to = values.length) {
  const found = { first: -1, second: -1 }
  findExtremes((i) => values[i]!, from, to, found)
  return [found.first, found.second]
}

it('finds the lowest and the highest in order of place, as Math.min and Math.max do', () => {
  const random = createRandom(3)
  for (let round = 0; round < 300; round++) {
    const values = Array.from({ length: random.wholeBetween(1, 12) }, () => random.wholeBetween(-9, 9))
    const low = values.indexOf(Math.min(...values))
    const high = values.indexOf(Math.max(...values))
    expect(extremesOf(values)).toEqual([Math.min(low, high), Math.max(low, high)])
  }
})

it('looks only at the part that it is given', () => {
  expect(extremesOf([99, 5, 1, 7, -99], 1, 4)).toEqual([2, 3])
  expect(extremesOf([99, 5, -99], 1, 2)).toEqual([1, 1])
})
