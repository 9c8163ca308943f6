import { expect, test } from 'vitest'
import { addAssessment } from '#archive/breaks/assessments.ts'
import { addDecision } from '#archive/breaks/decisions.ts'
import { rowFits, searchCondition, searchJoins, teachSearch } from '#archive/lists/listSearch.ts'
import { listBreaks } from '#archive/lists/lists.ts'
import { listSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { addDialReadings } from '#archive/specimens/typedResults.ts'
import { listQuery } from '#contract/listQuery.ts'
import { standIn } from '#tests/fakes/time/standIn.ts'
import { dayWords } from '#words/units/times.ts'
import { archiveInMemory, morning, rampAndFall, specimenFields, storeBreak } from '../storedStudy.ts'

// 1: tight joint, broke at 6000 N on 600 mm2 (10 MPa, 1349 lbf). 2: gap 0.5 mm, unloaded. 3: gap 0.05 mm, not loaded.
function study() {
  const database = archiveInMemory()
  addSpecimens(
    database,
    [
      specimenFields('A-1', { bondLineGapMm: 0, areaMm2: 600, gluedOn: '2031-01-09' }),
      specimenFields('A-2', { bondLineGapMm: 0.5 }),
      specimenFields('A-3', { bondLineGapMm: 0.05 }),
    ],
    morning,
    'bench',
  )
  storeBreak(database, 1, rampAndFall(100, 600_000))
  storeBreak(database, 2, rampAndFall(100, 100_000), { outcome: 'unloading' })
  return database
}

const found = (database: ReturnType<typeof study>, text: string) => ({
  breaks: listBreaks(database, listQuery.parse({ text })).rows.map(({ number }) => number),
  specimens: listSpecimens(database, listQuery.parse({ text })).rows.map(({ fields }) => fields.number),
})

test('a row is found by everything that it shows', () => {
  const database = study()
  const peakN = listBreaks(database, listQuery.parse({ text: 'a-1' })).rows[0]!.peakN!
  expect(found(database, 'gap 0')).toEqual({ breaks: ['A-1'], specimens: ['A-1'] })
  expect(found(database, 'tight')).toEqual({ breaks: ['A-1'], specimens: ['A-1'] })
  expect(found(database, 'gap 0.5')).toEqual({ breaks: ['A-2'], specimens: ['A-2'] })
  expect(found(database, `peak ${Math.round(peakN)}`).breaks).toEqual(['A-1'])
  expect(found(database, `${Math.round(peakN / 4.4482216152605)} lbf`).breaks).toEqual(['A-1'])
  expect(found(database, 'area 600').specimens).toContain('A-1')
  expect(found(database, dayWords(morning)).breaks).toHaveLength(2)
  expect(found(database, '9 jan 2031').specimens).toEqual(['A-1'])
  expect(found(database, 'unloaded').breaks).toEqual(['A-2'])
  expect(found(database, 'waiting').specimens).toEqual(['A-2', 'A-3'])
  expect(found(database, 'no such word')).toEqual({ breaks: [], specimens: [] })
})

test('a break is found by what a person decided about it', () => {
  const database = study()
  addDecision(database, {
    ...{ breakId: 1, kind: 'set-aside', recordedAt: morning, by: 'bench 1', reason: 'heard it slip', specimenId: null },
  })
  expect(found(database, 'set aside slip').breaks).toEqual(['A-1'])
})

test('what may be passed over unseen is found by none of its words', () => {
  const database = study()
  addAssessment(database, {
    ...{
      breakId: 1,
      recordedAt: morning,
      by: 'bench',
      failurePattern: null,
      woodFailurePercent: 75,
      note: 'Starved joint',
    },
  })
  addDecision(database, {
    ...{ breakId: 2, kind: 'set-aside', recordedAt: morning, by: 'bench 1', reason: 'heard it slip', specimenId: null },
  })
  const sample = { timeS: 0.05, reading: 100_000 }
  addDecision(database, {
    ...{
      breakId: 1,
      kind: 'peak-picked',
      recordedAt: morning,
      by: 'Moss',
      reason: 'a knock',
      specimenId: null,
      sample,
    },
  })
  teachSearch(database)
  const words = [
    ...['a-1', 'casein', 'loft', 'starved', 'moss', 'knock', 'bench', 'slip', 'heard', 'waiting', 'tight', 'invented'],
    ...[
      'uncalibrated',
      'simulated',
      'broke',
      'unloaded',
      'aside',
      'peak',
      '600',
      'mm',
      '2031',
      'may',
      'e',
      'zzz',
      '75',
    ],
  ]
  const seen = (text: string, ...values: unknown[]) =>
    database
      .prepare<unknown[], number>(text)
      .pluck()
      .all(...values)
  for (const word of words) {
    const json = JSON.stringify([word])
    const specimens = searchCondition([word], 'specimens')
    expect(
      seen(`SELECT s.specimen_id FROM specimen_current s WHERE 1 ${specimens.condition}`, ...specimens.values),
      word,
    ).toEqual(
      seen(
        `SELECT s.specimen_id FROM specimen_current s LEFT JOIN break_current b ON b.break_id = s.break_in_force
         ${searchJoins} WHERE ${rowFits}`,
        json,
      ),
    )
    const joined = 'FROM break_current b LEFT JOIN specimen_current s ON s.specimen_id = b.specimen_id'
    const breaks = searchCondition([word], 'breaks')
    expect(seen(`SELECT b.break_id ${joined} WHERE 1 ${breaks.condition}`, ...breaks.values), word).toEqual(
      seen(`SELECT b.break_id ${joined} ${searchJoins} WHERE ${rowFits}`, json),
    )
  }
})

test('a row is found by its days, however they are written, and by its age', () => {
  standIn('UTC')
  const database = study()
  addSpecimens(database, [specimenFields('S-1', { gluedOn: '2030-09-05' })], morning, 'bench')
  storeBreak(database, 4)
  for (const text of ['sept 2030', 'september', '5 sep', '2030-09-05', 'age 8 months'])
    expect(found(database, text).specimens, text).toEqual(['S-1'])
  for (const text of ['2031-05-02', '2 may', '2031-05']) expect(found(database, text).breaks, text).toHaveLength(3)
  expect(found(database, 'february').breaks).toEqual([])
})

test('a result without a curve is found by all that says where it comes from', () => {
  const database = study()
  const reading = { specimenId: 3, peakN: 4200, resolutionN: 50, readBy: 'Ada Thole', note: '' }
  const nothing = { woodFailurePercent: null, failurePattern: null, brokenOn: null }
  addDialReadings(database, [{ ...reading, ...nothing }], morning, 'bench')
  for (const text of ['peak only', 'read from a dial', 'steps of 50', 'thole', '11.2 lbf'])
    expect(found(database, text).specimens, text).toEqual(['A-3'])
})

test('a break is found by why it was set aside, by having no specimen, and by not being the only result', () => {
  const database = study()
  storeBreak(database, 1, rampAndFall(100, 500_000))
  storeBreak(database, null)
  expect(found(database, '2 results on this').breaks).toEqual(['A-1', 'A-1'])
  expect(found(database, 'results').specimens).toEqual(['A-1'])
  expect(found(database, 'none').breaks).toEqual([null])
  const aside = { breakId: 3, kind: 'set-aside', cause: 'fixture-touched', recordedAt: morning, by: 'bench' } as const
  addDecision(database, { ...aside, reason: 'see note', specimenId: null })
  expect(found(database, 'fixture touched').breaks).toEqual(['A-1'])
  expect(found(database, 'results')).toEqual({ breaks: [], specimens: [] })
})
