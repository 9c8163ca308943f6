import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { roundedTable } from '#domain/numbers/roundedTable.ts'

const sum = (list: readonly number[]) => list.reduce((all, one) => all + one, 0)
const columnsOf = (table: readonly (readonly number[])[]) =>
  table[0]!.map((_, column) => table.map((row) => row[column]!))

// What Cox (1987) proves of the procedure: every entry and margin moves by less than 1, what is whole stays, and the mean stays.
describe('a rounded table', () => {
  const random = createRandom(3)
  const tables = Array.from({ length: 60 }, () => {
    const [rows, columns] = [random.wholeBetween(1, 7), random.wholeBetween(1, 9)]
    const denominator = random.wholeBetween(1, 30)
    const numerators = Array.from({ length: rows }, () =>
      Array.from({ length: columns }, () => random.wholeBetween(0, 90)),
    )
    return { numerators, denominator, rounded: roundedTable(numerators, denominator, random) }
  })

  it.each([
    ['entry', (table: readonly (readonly number[])[]) => table.flat()],
    ['sum of a row', (table: readonly (readonly number[])[]) => table.map(sum)],
    ['sum of a column', (table: readonly (readonly number[])[]) => columnsOf(table).map(sum)],
  ])('moves every %s by less than 1', (_what, partsOf) => {
    for (const { numerators, denominator, rounded } of tables) {
      const exact = partsOf(numerators)
      for (const [place, whole] of partsOf(rounded).entries())
        expect(Math.abs(whole * denominator - exact[place]!)).toBeLessThan(denominator)
    }
  })

  it('leaves what is whole as it is', () => {
    expect(
      roundedTable(
        [
          [6, 3],
          [0, 9],
        ],
        3,
        random,
      ),
    ).toEqual([
      [2, 1],
      [0, 3],
    ])
  })

  it('has on average the entries that it was made from', () => {
    const draws = 4000
    const sums = [0, 0, 0]
    for (let draw = 0; draw < draws; draw++)
      for (const [place, one] of roundedTable(
        [
          [1, 2, 4],
          [3, 1, 3],
        ],
        7,
        random,
      )[0]!.entries())
        sums[place]! += one
    // Four standard errors of a share p: 4 √(p (1 − p) / draws)
    for (const [place, share] of [1 / 7, 2 / 7, 4 / 7].entries())
      expect(Math.abs(sums[place]! / draws - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / draws))
  })
})

it('is empty for no rows', () => {
  expect(roundedTable([], 3, createRandom(1))).toEqual([])
})

it('refuses what is not exact', () => {
  expect(() => roundedTable([[0.5]], 1, createRandom(1))).toThrow(RangeError)
  expect(() => roundedTable([[-1]], 1, createRandom(1))).toThrow(RangeError)
  expect(() => roundedTable([[1]], 0, createRandom(1))).toThrow(RangeError)
})
