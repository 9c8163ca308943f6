import { expect, it } from 'vitest'
import { cellKey, cellsOf, seriesKey, seriesOf } from '#domain/programme/study/cells.ts'
import { madeStudy } from './madeStudy.ts'

const bilge = { jointType: 'lap', gapMm: 0, exposure: 'bilge' }

it('every combination of levels is a series, and every series at every age a cell', () => {
  const study = madeStudy({ gapsMm: [0, 0.3] })
  expect(seriesOf(study)).toHaveLength(3 * 1 * 2 * 2)
  expect(cellsOf(study)).toHaveLength(12 * 3)
  expect(
    cellsOf(study)
      .slice(0, 4)
      .map(({ exposure, ageMonths }) => [exposure, ageMonths]),
  ).toEqual([
    ['loft', 0],
    ['loft', 3],
    ['loft', 12],
    ['bilge', 0],
  ])
})

it('a cell that is left out is not made, and the others of its series are', () => {
  const study = madeStudy({ leftOut: [{ adhesive: 'casein C1', ...bilge, ageMonths: 12 }] })
  expect(cellsOf(study)).toHaveLength(17)
  expect(seriesOf(study)).toHaveLength(6)
})

it('a series that is left out is not made at any age', () => {
  const study = madeStudy({ leftOut: [{ adhesive: 'casein C1', ...bilge, ageMonths: null }] })
  expect(cellsOf(study)).toHaveLength(15)
  expect(seriesOf(study)).toHaveLength(5)
})

it('a series with all its ages left out one by one is no series', () => {
  const leftOut = [0, 3, 12].map((ageMonths) => ({ adhesive: 'epoxy E4', ...bilge, ageMonths }))
  expect(seriesOf(madeStudy({ leftOut }))).toHaveLength(5)
})

it('cells and series that differ in anything have different keys, the spares too', () => {
  const cells = [...cellsOf(madeStudy()), ...seriesOf(madeStudy()).map((series) => ({ ...series, ageMonths: null }))]
  expect(new Set(cells.map(cellKey)).size).toBe(cells.length)
  expect(new Set(cells.map(seriesKey)).size).toBe(6)
})
