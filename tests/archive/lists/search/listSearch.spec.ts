import { expect, test } from 'vitest'
import { addAssessment } from '#archive/breaks/assessments.ts'
import { addDecision } from '#archive/breaks/decisions.ts'
import { derivationVersion } from '#archive/lists/derivation.ts'
import { listBreaks } from '#archive/lists/lists.ts'
import { listSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { addDialReadings } from '#archive/specimens/typedResults.ts'
import { curveEvent } from '#contract/breaks/evaluation.ts'
import { listQuery } from '#contract/listQuery.ts'
import { standIn } from '#tests/fakes/time/standIn.ts'
import { dayWords, instantWords } from '#words/units/times.ts'
import { archiveInMemory, morning, rampAndFall, specimenFields, storeBreak } from '../../storedStudy.ts'

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

test('a word finds the rows that show it or of which somebody said it, and no others', () => {
  const database = study()
  addAssessment(database, {
    ...{ breakId: 1, recordedAt: morning, by: 'bench', failurePattern: null, woodFailurePercent: 75 },
    note: 'Starved joint',
  })
  addDecision(database, {
    ...{ breakId: 2, kind: 'set-aside', recordedAt: morning, by: 'bench 1', reason: 'heard it slip', specimenId: null },
  })
  const word = { recordedAt: morning, by: 'Moss', reason: 'a knock', specimenId: null }
  addDecision(database, { ...word, breakId: 1, kind: 'peak-picked', sample: { timeS: 0.05, reading: 100_000 } })
  const [one, two, all] = [['A-1'], ['A-1', 'A-2'], ['A-1', 'A-2', 'A-3']]
  const expected: [words: string[], breaks: string[], specimens: string[]][] = [
    [['a-1', 'starved', 'moss', 'knock', 'tight', 'broke', '75'], one, one],
    [['casein', 'loft', 'invented', '600', 'mm', '2031', 'gap'], two, all],
    [['uncalibrated', 'simulated', 'may', 'peak'], two, one],
    [['slip', 'heard', 'aside'], ['A-2'], []],
    [['waiting'], [], ['A-2', 'A-3']],
    // Who set a break aside stands in no row; it is not running, unloaded no more, and nothing of the others is so.
    [['bench', 'unloaded', 'running', 'results', 'none', 'other', 'drop', 'interrupted', 'zzz'], [], []],
  ]
  for (const [words, breaks, specimens] of expected)
    for (const text of words) expect(found(database, text), text).toEqual({ breaks, specimens })
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

test('a result without a curve is found by the day that stands in its row, wherever the reader is', () => {
  standIn('America/New_York')
  const database = study()
  const reading = { specimenId: 3, peakN: 4200, resolutionN: 50, readBy: '', note: '' }
  const nothing = { woodFailurePercent: null, failurePattern: null }
  addDialReadings(database, [{ ...reading, ...nothing, brokenOn: '2031-06-01' }], morning, 'bench')
  for (const text of ['2031-06-01', '1 jun', 'june']) expect(found(database, text).specimens, text).toEqual(['A-3'])
  expect(found(database, '2031-05-31').specimens).toEqual([])
})

test('a break is found by its time of day, and by its events', () => {
  const database = study()
  const times = { startTimeS: 1, endTimeS: 1.1 }
  const event = curveEvent.parse({ ...times, kind: 'pop-in', dropN: 20, dropPercent: 2, cycles: null })
  storeBreak(database, 3, rampAndFall(100, 300_000), { events: [event] })
  const timeOfDay = instantWords(morning).slice(-5)
  expect(timeOfDay).toMatch(/^\d\d:\d\d$/)
  expect(found(database, timeOfDay)).toEqual({ breaks: ['A-1', 'A-2', 'A-3'], specimens: ['A-1', 'A-3'] })
  expect(found(database, '23:59').breaks).toEqual([])
  expect(found(database, 'pop-in')).toEqual({ breaks: ['A-3'], specimens: ['A-3'] })
})

// What is stored goes stale when it is worded in another way: that needs another derivationVersion, as this says.
test('the figures of a specimen are stored as this derivation words them', () => {
  const database = study()
  const stored = database.prepare('SELECT figures FROM specimen_current WHERE specimen_id = 1').pluck().get()
  expect([derivationVersion, stored]).toEqual([
    8,
    'gap 0 mm gap 0 in overlap 30 mm overlap 1.181 in overlap 20 mm overlap 0.787 in area 600 mm2 area 0.93 in2 ' +
      '9 jan 2031 january 2031-01-09 age 4 months age 4 months \n' +
      'peak 6000 n peak 1349 lbf strength 10.00 mpa strength 1450 psi ',
  ])
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
