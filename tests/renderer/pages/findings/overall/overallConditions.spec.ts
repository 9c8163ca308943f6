import { expect, test } from 'vitest'
import { adhesivesOf, namedConditions } from '#renderer/pages/findings/overall/overallConditions.ts'

const group = (adhesive: string, exposure: string) => ({
  ...{ key: `${adhesive} ${exposure}`, adhesive, jointType: 'lap', bondLineGapMm: 0, exposure },
})
const groups = [group('R2', 'loft'), group('E4', 'loft'), group('R2', 'bilge')]
const length = (mm: number) => `${mm} mm`

test('finds every condition once, by what tells it from the others, with weight 1 until something is chosen', () => {
  expect(namedConditions(groups, { conditions: null }, length).map(({ name, weight }) => [name, weight])).toEqual([
    ['loft', 1],
    ['bilge', 1],
  ])
})

test('gives a condition that was not chosen no weight, and keeps one that was chosen though its blocks are gone', () => {
  const chosen = (exposure: string, weight: number) => ({ jointType: 'lap', bondLineGapMm: 0, exposure, weight })
  const conditions = [chosen('loft', 2), chosen('boil', 1)]
  expect(namedConditions(groups, { conditions }, length).map(({ name, weight }) => [name, weight])).toEqual([
    ['loft', 2],
    ['bilge', 0],
    ['boil', 1],
  ])
})

test('names a single condition by its exposure', () => {
  expect(namedConditions([group('R2', 'loft')], { conditions: null }, length)[0]!.name).toBe('loft')
})

test('lists adhesives once, in order', () => {
  expect(adhesivesOf(groups)).toEqual(['E4', 'R2'])
})
