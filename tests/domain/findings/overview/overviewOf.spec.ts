import { expect, it } from 'vitest'
import { blockStates, overviewFilter } from '#contract/findings/overview.ts'
import { type OverviewBlock, overviewOf } from '#domain/findings/overview/overviewOf.ts'

const all = overviewFilter.parse({})
const block = (number: string, change: Partial<OverviewBlock> = {}): OverviewBlock => ({
  ...{ adhesive: 'casein C1', jointType: 'beech lap', bondLineGapMm: 0, exposure: 'loft', ageMonths: 6, number },
  ...{ specimenId: 7, breakId: 8, state: 'curve', strengthMPa: 9, woodFailurePercent: 40, simulated: false },
  ...change,
})

it('gives one entry in every column for each block, in the order of the cells', () => {
  const found = overviewOf(
    [
      block('B', { adhesive: 'epoxy E4', specimenId: 3, state: 'peak-only', breakId: null }),
      block('A', { specimenId: 4, breakId: 5, simulated: true }),
      block('C', { specimenId: null, breakId: null, state: 'planned', strengthMPa: null, woodFailurePercent: null }),
    ],
    all,
  )
  expect(found.cells.map(({ adhesive, blocks }) => [adhesive, blocks])).toEqual([
    ['casein C1', 2],
    ['epoxy E4', 1],
  ])
  expect(found.numbers).toEqual(['A', 'C', 'B'])
  expect([...found.specimenIds]).toEqual([4, 0, 3])
  expect([...found.breakIds]).toEqual([5, 0, 0])
  expect([...found.states].map((state) => blockStates[state])).toEqual(['curve', 'planned', 'peak-only'])
  expect([...found.strengthsMPa]).toEqual([9, Number.NaN, 9])
  expect([...found.woodFailurePercents]).toEqual([40, Number.NaN, 40])
  expect([found.blocks, found.simulated]).toEqual([3, 1])
})

it('orders cells as people count, with what is not known last', () => {
  const traits: Partial<OverviewBlock>[] = [
    { adhesive: 'epoxy 10' },
    { ageMonths: null },
    { ageMonths: 120 },
    { bondLineGapMm: null },
    { bondLineGapMm: 0.5 },
    { adhesive: 'epoxy 9' },
    {},
  ]
  const { cells } = overviewOf(
    traits.map((change, i) => block(String(i), change)),
    all,
  )
  expect(cells.map(({ adhesive, bondLineGapMm, ageMonths }) => [adhesive, bondLineGapMm, ageMonths])).toEqual([
    ['casein C1', 0, 6],
    ['casein C1', 0, 120],
    ['casein C1', 0, null],
    ['casein C1', 0.5, 6],
    ['casein C1', null, 6],
    ['epoxy 9', 0, 6],
    ['epoxy 10', 0, 6],
  ])
})

it('puts the weakest of a cell first and what has no strength last', () => {
  const strengths = [null, 9, 4, 7]
  const found = overviewOf(
    strengths.map((strengthMPa, i) => block(String(i), { strengthMPa })),
    all,
  )
  expect(found.numbers).toEqual(['2', '3', '1', '0'])
})

it('takes names that differ in case alone for one, under the name of the first', () => {
  const { cells } = overviewOf([block('A'), block('B', { adhesive: 'Casein c1', exposure: 'LOFT' })], all)
  expect(cells).toEqual([expect.objectContaining({ adhesive: 'casein C1', exposure: 'loft', blocks: 2 })])
})

it.each([
  { adhesives: ['epoxy E4'] },
  { jointTypes: ['scarf'] },
  { bondLineGapsMm: [null] },
  { exposures: ['bilge'] },
  { agesMonths: [12, 24] },
])('lets through what %j names, and goes on naming all levels', (filter) => {
  const other = block('other', {
    adhesive: 'epoxy E4',
    jointType: 'scarf',
    bondLineGapMm: null,
    exposure: 'bilge',
    ageMonths: 12,
  })
  const found = overviewOf([block('A'), other], overviewFilter.parse(filter))
  expect([found.numbers, found.blocks]).toEqual([['other'], 1])
  expect(found.levels).toEqual({
    adhesives: ['casein C1', 'epoxy E4'],
    jointTypes: ['beech lap', 'scarf'],
    bondLineGapsMm: [0, null],
    exposures: ['bilge', 'loft'],
    agesMonths: [6, 12],
  })
})

it('spells each trait as it was written first for that trait', () => {
  // An older program took a name in which nothing can be seen: it has the key of a trait that nobody wrote.
  const blocks = [block('A', { exposure: 'LOFT' }), block('B', { adhesive: '\u0000', jointType: 'loft', exposure: '' })]
  expect(overviewOf(blocks, all).cells.map((cell) => [cell.adhesive, cell.jointType, cell.exposure])).toEqual([
    ['\u0000', 'loft', ''],
    ['casein C1', 'beech lap', 'LOFT'],
  ])
})

it('answers no more blocks than asked, in whole cells, and says how many there are', () => {
  const blocks = [1, 1, 1, 2, 2, 3].map((age, i) => block(String(i), { ageMonths: age }))
  const shown = (most: number) => overviewOf(blocks, all, most).numbers.length
  expect([6, 5, 4, 3, 1].map(shown)).toEqual([6, 5, 3, 3, 3])
  expect(overviewOf(blocks, all, 3).blocks).toBe(6)
})

it('stands without any block', () => {
  expect(overviewOf([], all)).toMatchObject({ cells: [], numbers: [], blocks: 0, levels: { adhesives: [] } })
})
