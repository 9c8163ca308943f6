import { describe, expect, it } from 'vitest'
import type { BlockToGlue } from '#contract/programme/glueUpProcedures.ts'
import { agesToGlue, chosenBlocks, seriesToGlue } from '#domain/programme/glueUp/chosenBlocks.ts'
import { seriesKey } from '#domain/programme/study/cells.ts'

const block = (blockId: number, ageMonths: number | null, exposure = 'loft'): BlockToGlue => ({
  ...{
    blockId,
    number: `${blockId}`,
    adhesive: 'casein C1',
    jointType: 'lap',
    gapMm: 0,
    exposure,
    ageMonths,
    board: '',
  },
})
const blocks = [block(1, 3), block(2, null), block(3, 0), block(4, 0, 'bilge'), block(5, 12), block(6, 0)]
const loft = seriesKey(block(0, 0))
const bilge = seriesKey(block(0, 0, 'bilge'))
const ids = (series: [string, number | null][], ages: (number | null)[] = [0, 3, 12, null]) =>
  chosenBlocks(blocks, { series: new Map(series), ages: new Set(ages) }).map(({ blockId }) => blockId)

describe('the blocks of a glue-up', () => {
  it('are those of the chosen series, in the order of their numbers', () => {
    expect(ids([[loft, null]])).toEqual([1, 2, 3, 5, 6])
    expect(
      ids([
        [bilge, null],
        [loft, null],
      ]),
    ).toEqual([1, 2, 3, 4, 5, 6])
    expect(ids([])).toEqual([])
  })

  it('are of the youngest ages where not all of a series are glued, spares last', () => {
    expect(ids([[loft, 3]])).toEqual([1, 3, 6])
    expect(ids([[loft, 4]])).toEqual([1, 3, 5, 6])
    expect(ids([[loft, 5]])).toContain(2)
  })

  it('are of the chosen ages alone', () => {
    expect(ids([[loft, null]], [0])).toEqual([3, 6])
    expect(ids([[loft, 1]], [null, 12])).toEqual([5])
  })
})

it('finds the series and the ages that are still to be glued', () => {
  expect(seriesToGlue(blocks).map(({ exposure, blocks: of }) => [exposure, of.length])).toEqual([
    ['loft', 5],
    ['bilge', 1],
  ])
  expect(agesToGlue(blocks)).toEqual([0, 3, 12, null])
})
