import { expect, it } from 'vitest'
import { studyFields } from '#contract/programme/study.ts'
import { studyStock } from '#domain/programme/stock/studyStock.ts'

const series = { adhesive: 'casein C1', jointType: 'lap', gapMm: 0, exposure: 'loft', gluedOn: '2031-08-31' }
const fields = studyFields.parse({
  ...{ title: 'Loft', adhesives: ['casein C1'], jointTypes: ['lap'], gapsMm: [0], exposures: ['loft'] },
  ...{ agesMonths: [6, 12], blocksPerCell: 3, windowDays: 14, cvPercent: 10, seed: 1 },
})
const study = { studyId: 4, revision: 1, recordedAt: '2031-01-01T00:00:00.000Z', by: '', reason: '', fields }
const row = (ageMonths: number | null, waiting: number, lost = 0) => ({
  ...series,
  ...{ ageMonths, planned: waiting + lost, waiting, broken: 0, lost },
})
const rows = [row(6, 3), row(12, 1, 2), row(null, 1)]
const source = {
  study,
  counts: rows,
  ...{ unglued: [], decisions: [], spares: [], corrections: 0, glueUps: [] },
}

it('fills what is short from the spares while all pulls are to come', () => {
  const [stock] = studyStock(source, rows, '2031-09-01')
  expect(stock).toMatchObject({ adhesive: 'casein C1', gluedOn: '2031-08-31', free: 0 })
  expect(stock!.ages.map(({ ageMonths, filled, blocks }) => [ageMonths, filled, blocks])).toEqual([
    [6, 0, 3],
    [12, 1, 2],
  ])
  expect(stock!.ages[1]!.detectablePercent).toBeGreaterThan(stock!.ages[1]!.detectableAsPlannedPercent!)
})

it('gives the blocks of a missed pull to the ages that are to come', () => {
  const [stock] = studyStock(source, rows, '2032-04-01')
  expect(stock!.ages.map(({ ageMonths, filled, blocks }) => [ageMonths, filled, blocks])).toEqual([[12, 2, 3]])
  expect(stock!.free).toBe(2)
})
