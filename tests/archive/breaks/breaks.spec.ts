import { expect, test } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { appendSamples, beginBreak, finishBreak, readCurve } from '#archive/breaks/breaks.ts'
import { databaseTrouble } from '#archive/core/databaseTrouble.ts'
import { reads } from '#archive/methods.ts'
import { addSpecimen } from '#archive/specimens/specimens.ts'
import { breakRecord } from '#contract/breaks/break.ts'
import {
  archiveInMemory,
  evaluationOf,
  header,
  morning,
  rampAndFall,
  session,
  specimenFields,
  storeBreak,
} from '../storedStudy.ts'

function runningBreak() {
  const database = archiveInMemory()
  const { sessionId } = beginSession(database, session)
  const { breakId } = beginBreak(database, header(sessionId, null))
  return { database, breakId }
}

test('gives back a finished break with its curve, sample by sample', () => {
  const database = archiveInMemory()
  const { specimenId } = addSpecimen(database, specimenFields('C1-LL-1'), morning, 'bench')
  const curve = rampAndFall(1234, 600_000)
  const breakId = storeBreak(database, specimenId, curve)
  expect(readCurve(database, breakId)).toEqual({
    timeS: curve.timeUs.map((timeUs) => timeUs / 1e6),
    readings: curve.readings,
  })
  const record = reads.break(database, breakId)
  expect(breakRecord.parse(record)).toEqual(record)
  expect(record.end).toMatchObject({ ending: 'complete', samples: 1234 })
  // 6000 N over 600 mm2
  expect(record.summary).toMatchObject({ number: 'C1-LL-1', peakN: 6000, strengthMPa: 10, scaleKind: scaleKindStored })
})

const scaleKindStored = 'uncalibrated-scale'

test('joins the samples of a break that still runs', () => {
  const { database, breakId } = runningBreak()
  appendSamples(database, breakId, { timeUs: Float64Array.of(0, 1000), readings: Float64Array.of(5, 6.5) })
  appendSamples(database, breakId, { timeUs: Float64Array.of(2000), readings: Float64Array.of(Math.PI) })
  expect(readCurve(database, breakId)).toEqual({
    timeS: Float64Array.of(0, 0.001, 0.002),
    readings: Float64Array.of(5, 6.5, Math.PI),
  })
  expect(reads.break(database, breakId).summary).toMatchObject({ ending: null, outcome: null, peakN: null })
})

test('seals a long curve in blocks and removes the running ones', () => {
  const database = archiveInMemory()
  const curve = rampAndFall(140_000, 5_000_000)
  const { sessionId } = beginSession(database, session)
  const { breakId } = beginBreak(database, header(sessionId, null))
  appendSamples(database, breakId, curve)
  finishBreak(database, breakId, morning, 'complete', 3, evaluationOf(curve))
  expect(database.prepare('SELECT samples FROM curve_block ORDER BY block').pluck().all()).toEqual([
    65_536, 65_536, 8928,
  ])
  expect(database.prepare('SELECT count(*) FROM running_block').pluck().get()).toBe(0)
  expect(readCurve(database, breakId).readings).toEqual(curve.readings)
})

test('finishes a break that had no sample', () => {
  const { database, breakId } = runningBreak()
  const empty = { timeUs: new Float64Array(0), readings: new Float64Array(0) }
  appendSamples(database, breakId, empty)
  const nothing = { outcome: 'none', peakN: null, peakTimeS: null } as const
  const end = finishBreak(database, breakId, morning, 'interrupted', 0, evaluationOf(empty, nothing))
  expect(end).toMatchObject({ samples: 0, ending: 'interrupted' })
  expect(readCurve(database, breakId)).toEqual({ timeS: new Float64Array(0), readings: new Float64Array(0) })
})

test.each([
  ['times that stand still', Float64Array.of(1000, 1000), Float64Array.of(1, 2)],
  ['times that fall behind the block before', Float64Array.of(500, 1500), Float64Array.of(1, 2)],
  ['times between microseconds', Float64Array.of(2000.5), Float64Array.of(1)],
  ['a reading that is no number', Float64Array.of(2000), Float64Array.of(Number.NaN)],
  ['more times than readings', Float64Array.of(2000, 3000), Float64Array.of(1)],
])('refuses %s and keeps what was stored', (_name, timeUs, readings) => {
  const { database, breakId } = runningBreak()
  appendSamples(database, breakId, { timeUs: Float64Array.of(0, 999), readings: Float64Array.of(1, 2) })
  expect(() => appendSamples(database, breakId, { timeUs, readings })).toThrow(RangeError)
  expect(readCurve(database, breakId).readings).toEqual(Float64Array.of(1, 2))
})

test('takes no more samples and no second end once finished', () => {
  const database = archiveInMemory()
  const breakId = storeBreak(database, null)
  const late = { timeUs: Float64Array.of(9e9), readings: Float64Array.of(1) }
  expect(() => appendSamples(database, breakId, late)).toThrow(/is finished/)
  expect(() => finishBreak(database, breakId, morning, 'complete', 0, evaluationOf(late))).toThrow(/is finished/)
})

test('refuses a session, a specimen or a break that is not there', () => {
  const database = archiveInMemory()
  expect(() => beginBreak(database, header(4, null))).toThrow(/no session 4/)
  const { sessionId } = beginSession(database, session)
  expect(() => beginBreak(database, header(sessionId, 5))).toThrow(/no specimen 5/)
  expect(() => appendSamples(database, 6, rampAndFall(10, 5))).toThrow(/no break 6/)
  expect(() => readCurve(database, 6)).toThrow(/no break 6/)
})

test('writes nothing by halves when the disk is full, and goes on when there is room again', () => {
  const { database, breakId } = runningBreak()
  const curve = rampAndFall(60_000, 8_000_000)
  appendSamples(database, breakId, curve)
  const ledgerBefore = database.prepare('SELECT count(*) FROM ledger').pluck().get()
  const pages = Number(database.pragma('page_count', { simple: true }))
  database.pragma(`max_page_count = ${pages}`)
  const finish = () => finishBreak(database, breakId, morning, 'complete', 0, evaluationOf(curve))
  let thrown: unknown
  try {
    finish()
  } catch (error) {
    thrown = databaseTrouble(error, 'study.breakledger')
  }
  expect(thrown).toMatchObject({ name: 'Trouble', code: 'disk-full' })
  expect(database.prepare('SELECT count(*) FROM ledger').pluck().get()).toBe(ledgerBefore)
  expect(database.prepare('SELECT count(*) FROM curve_block').pluck().get()).toBe(0)
  expect(readCurve(database, breakId).readings).toEqual(curve.readings)

  database.pragma(`max_page_count = ${pages * 10}`)
  expect(finish()).toMatchObject({ samples: 60_000 })
  expect(readCurve(database, breakId).readings).toEqual(curve.readings)
})
