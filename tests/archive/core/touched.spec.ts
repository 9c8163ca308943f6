import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { beginSession, keepRejectedLines } from '#archive/bench/sessions.ts'
import { addAssessment } from '#archive/breaks/assessments.ts'
import { appendSamples, beginBreak, finishBreak } from '#archive/breaks/breaks.ts'
import { addDecision } from '#archive/breaks/decisions.ts'
import { addEvaluation } from '#archive/breaks/evaluations.ts'
import { addCalibrationDecision } from '#archive/calibration/calibrationDecisions.ts'
import { addRoutineReading, beginRoutine, breakOffRoutine } from '#archive/calibration/calibrationRoutines.ts'
import { addCalibration } from '#archive/calibration/calibrations.ts'
import { addCheckWeight } from '#archive/calibration/checkWeights.ts'
import { saveWeights } from '#archive/calibration/weightSets.ts'
import { takeTouched, touch } from '#archive/core/touched.ts'
import { writes } from '#archive/methods.ts'
import { beginReevaluation, endReevaluation } from '#archive/reevaluation/reevaluations.ts'
import { setPreferences } from '#archive/settings/preferences.ts'
import { addSpecimen, addSpecimens, correctSpecimen } from '#archive/specimens/specimens.ts'
import type { Topic } from '#contract/topics.ts'
import { shopPlan } from '#tests/fakes/routineRun.ts'
import { madeCalibration, taken } from '../storedCalibration.ts'
import { decide, resultBeside } from '../storedReevaluation.ts'
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

const curve = rampAndFall(500, 600_000)
const word = { recordedAt: morning, by: 'bench', reason: 'why', specimenId: null }

/** Specimens 1 and 2, break 1 of specimen 1, calibration 1; nothing of it counts as touched. */
function study(): Database.Database {
  const database = archiveInMemory()
  addSpecimens(database, [specimenFields('A-1'), specimenFields('A-2')], morning, 'bench')
  storeBreak(database, 1, curve)
  addCalibration(database, madeCalibration(), null)
  takeTouched(database)
  return database
}

function touchedBy(database: Database.Database, write: () => unknown): Topic[] {
  write()
  return takeTouched(database).toSorted()
}

test('names each topic once, and forgets what was asked', () => {
  const database = study()
  touch(database, 'break 3', 'preferences')
  touch(database, 'break 3', 'break 1')
  expect(takeTouched(database)).toEqual(['preferences', 'break 3', 'break 1'])
  expect(takeTouched(database)).toEqual([])
})

test('speaks of all records of a kind where very many were touched', () => {
  const database = study()
  for (let number = 1; number <= 1000; number++) touch(database, `break ${number}`)
  touch(database, 'specimen 1')
  expect(takeTouched(database).toSorted()).toEqual(['breaks', 'specimen 1'])
})

test.each<[string, (database: Database.Database) => unknown, Topic[]]>([
  ['a new specimen', (on) => addSpecimen(on, specimenFields('A-3'), morning, 'bench'), ['specimen 3']],
  [
    'a corrected specimen, with its breaks: their summaries show its fields',
    (on) => correctSpecimen(on, 1, specimenFields('A-1', { place: 'loft' }), morning, 'bench', 'moved'),
    ['break 1', 'catalogue', 'result 1', 'specimen 1'],
  ],
  ['a session', (on) => beginSession(on, session), ['session 2']],
  ['rejected lines', (on) => keepRejectedLines(on, 1, morning, 1, Uint8Array.of(63)), []],
  [
    'an evaluation, with the curve drawn under it',
    (on) => addEvaluation(on, { ...evaluationOf(curve), breakId: 1 }),
    ['break 1', 'curve 1', 'result 1', 'specimen 1'],
  ],
  [
    'an assessment, which touches no result, but what its faces count as',
    (on) =>
      addAssessment(on, {
        breakId: 1,
        recordedAt: morning,
        by: 'bench',
        woodFailurePercent: 75,
        failurePattern: null,
        note: '',
      }),
    ['break 1', 'face 1', 'specimen 1'],
  ],
  [
    'a break that is moved, with the specimen it was taken from and the one it belongs to now',
    (on) => addDecision(on, { ...word, breakId: 1, kind: 'reassigned', specimenId: 2 }),
    ['break 1', 'result 1', 'specimen 1', 'specimen 2'],
  ],
  ['preferences', (on) => setPreferences(on, { units: 'US' }), ['preferences']],
  ['weights', (on) => saveWeights(on, shopPlan().weights, morning, 'bench'), ['weights']],
  ['a calibration', (on) => addCalibration(on, madeCalibration(), null), ['calibration 2']],
  [
    'which calibration is in force',
    (on) => addCalibrationDecision(on, { recordedAt: morning, by: 'bench', reason: 'why', calibrationId: 1 }),
    ['calibrations'],
  ],
  [
    'a check with a weight',
    (on) =>
      addCheckWeight(on, {
        calibrationId: 1,
        takenAt: morning,
        by: 'bench',
        weight: '20 kg no. 1',
        expectedN: 196.25,
        indicatedN: 196.3,
        sdN: 0.05,
        count: 160,
      }),
    ['check 1'],
  ],
])('is told of %s', (_name, write, topics) => {
  const database = study()
  expect(touchedBy(database, () => write(database))).toEqual(topics)
})

test('is told of a capture when it begins and when it ends, not of its samples', () => {
  const database = study()
  expect(touchedBy(database, () => beginBreak(database, header(1, 2)))).toEqual(['break 2', 'specimen 2'])
  expect(touchedBy(database, () => appendSamples(database, 2, curve))).toEqual([])
  expect(touchedBy(database, () => finishBreak(database, 2, morning, 'complete', 0, evaluationOf(curve)))).toEqual([
    'break 2',
    'curve 2',
    'result 2',
    'specimen 2',
  ])
})

test('is told of a calibration routine when it begins, at each reading, and when it ends', () => {
  const database = study()
  const begun = { begunAt: morning, by: 'bench', source: 'a port', plan: shopPlan() }
  expect(touchedBy(database, () => beginRoutine(database, begun))).toEqual(['routine 1'])
  expect(touchedBy(database, () => addRoutineReading(database, 1, 0, taken[0]!))).toEqual(['routine 1'])
  expect(touchedBy(database, () => breakOffRoutine(database, 1, morning, 'a fault'))).toEqual(['routine 1'])
  beginRoutine(database, begun)
  takeTouched(database)
  expect(touchedBy(database, () => addCalibration(database, madeCalibration(), 2))).toEqual([
    'calibration 2',
    'routine 2',
  ])
})

test('is told of a re-evaluation when it begins, ends and is decided on, not of each batch of results', () => {
  const database = study()
  const begun = { begunAt: morning, by: 'bench', method: 'test 9', calibrationId: null, settings: {}, breakIds: [1] }
  const end = { reevaluationId: 1, endedAt: morning, ending: 'complete', problems: [] } as const
  expect(touchedBy(database, () => beginReevaluation(database, begun))).toEqual(['reevaluation 1'])
  const made = resultBeside(database, 1)
  expect(touchedBy(database, () => writes.addReevaluated(database, 1, [made]))).toEqual([])
  expect(touchedBy(database, () => endReevaluation(database, { ...end, problems: [] }))).toEqual([
    'break 1',
    'reevaluation 1',
  ])
  expect(touchedBy(database, () => decide(database, 1, 'adopted'))).toEqual([
    'break 1',
    'curve 1',
    'reevaluation 1',
    'result 1',
    'specimen 1',
  ])
})
