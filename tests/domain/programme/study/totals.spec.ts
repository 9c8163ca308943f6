import { expect, it } from 'vitest'
import { studyTotals } from '#domain/programme/study/totals.ts'
import { madeBoards, madeStudy } from './madeStudy.ts'

const bilge = { jointType: 'lap', gapMm: 0, exposure: 'bilge' }

it('counts 6 adhesives x 2 exposures x 12 ages x 12 blocks as 1728', () => {
  const study = madeStudy({
    adhesives: ['C1', 'E4', 'F6', 'R2', 'U3', 'V5'],
    agesMonths: [0, 6, 12, 18, 24, 30, 36, 48, 60, 72, 84, 96],
  })
  expect(studyTotals(study)).toMatchObject({ series: 12, cells: 144, aged: 1728, spares: 0, blocks: 1728 })
})

it('counts spares once a series and leaves out what is left out', () => {
  const leftOut = [{ adhesive: 'casein C1', ...bilge, ageMonths: 12 }]
  // 17 cells of 12 and 6 series of 4
  expect(studyTotals(madeStudy({ leftOut, sparesPerSeries: 4 }))).toMatchObject({ aged: 204, spares: 24, blocks: 228 })
})

it('adds up the adhesive, of each and of all', () => {
  const leftOut = [{ adhesive: 'casein C1', ...bilge, ageMonths: null }]
  const totals = studyTotals(madeStudy({ leftOut, adhesiveGPerBlock: 0.5 }))
  expect(totals.adhesives).toEqual([
    { name: 'casein C1', blocks: 36, grams: 18 },
    { name: 'epoxy E4', blocks: 72, grams: 36 },
    { name: 'resorcinol R2', blocks: 72, grams: 36 },
  ])
  expect(totals.grams).toBe(90)
})

it('what is broken at once needs no shelf, spares do', () => {
  // Loft and bilge: 3 series x 2 ages x 12, and 3 spares
  const { exposures } = studyTotals(madeStudy({ sparesPerSeries: 1 }))
  expect(exposures.map(({ blocks }) => blocks)).toEqual([75, 75])
})

it('wood and shelf follow from the pieces and their overlap', () => {
  const sizes = { pieceLengthMm: 50, pieceWidthMm: 20, pieceThicknessMm: 10, overlapLengthMm: 30 }
  const totals = studyTotals(madeStudy(sizes))
  // 216 blocks of two pieces of 50 mm, 20 mm x 10 mm; 144 on the shelf, each 70 mm x 20 mm x 20 mm
  expect(totals.woodMm).toBe(21_600)
  expect(totals.woodMm3).toBe(4_320_000)
  expect(totals.shelfMm3).toBe(144 * 28_000)
})

it('what is not said is not known', () => {
  const totals = studyTotals(madeStudy({ pieceLengthMm: 50 }))
  expect(totals).toMatchObject({ grams: null, woodMm: 21_600, woodMm3: null, shelfMm3: null, boardsGive: null })
})

it('adds up what the boards give', () => {
  expect(studyTotals(madeStudy({ boards: madeBoards(7, 11) })).boardsGive).toBe(77)
})
