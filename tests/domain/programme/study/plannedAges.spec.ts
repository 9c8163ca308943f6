import { expect, test } from 'vitest'
import type { StudyPlan } from '#domain/programme/study/cells.ts'
import { plannedAges } from '#domain/programme/study/plannedAges.ts'

const plan = (change: Partial<StudyPlan> = {}): StudyPlan => ({
  ...{ adhesives: ['casein C1', 'resorcinol R2'], jointTypes: ['lap'], gapsMm: [0], exposures: ['loft'] },
  ...{ agesMonths: [0, 6, 12], leftOut: [] },
  ...change,
})
const casein = { adhesive: 'Casein C1', jointType: 'lap', bondLineGapMm: 0, exposure: 'loft' }

test('are those of every study that makes the series, each once, rising', () => {
  expect(plannedAges([plan(), plan({ agesMonths: [3, 12, 120] })])(casein)).toEqual([0, 3, 6, 12, 120])
})

test('are none of a series that no study makes', () => {
  const ages = plannedAges([plan()])
  expect(ages({ ...casein, exposure: 'bilge' })).toEqual([])
  expect(ages({ ...casein, bondLineGapMm: null })).toEqual([])
})

test('are without the cells that a study leaves out', () => {
  const cell = { adhesive: 'casein C1', jointType: 'lap', gapMm: 0, exposure: 'loft' }
  const ages = plannedAges([plan({ leftOut: [{ ...cell, ageMonths: 6 }] })])
  expect(ages(casein)).toEqual([0, 12])
  expect(ages({ ...casein, adhesive: 'resorcinol R2' })).toEqual([0, 6, 12])
})
