import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { addEvaluation } from '#archive/breaks/evaluations.ts'
import { verify } from '#archive/verify/verify.ts'
import { madeCalibration, storeCalibrations } from '../storedCalibration.ts'
import { archiveInMemory, evaluationOf, rampAndFall, storeBreak } from '../storedStudy.ts'

function study(): Database.Database {
  const database = archiveInMemory()
  storeCalibrations(database)
  const curve = rampAndFall(500, 60_000)
  const breakId = storeBreak(database, null, curve)
  const { coefficients } = madeCalibration().assessment.result
  const [b0, b1] = coefficients as [number, number]
  addEvaluation(database, {
    ...evaluationOf(curve, { peakN: b0 + b1 * 60_000, flags: [] }),
    breakId,
    scale: { kind: 'calibration', calibrationId: 1, coefficients },
  })
  return database
}

function faultsAfter(text: string): string {
  const database = study()
  const triggers = database.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").pluck().all()
  for (const name of triggers) database.exec(`DROP TRIGGER ${name}`)
  database.pragma('foreign_keys = OFF')
  database.exec(text)
  return verify(database, () => {})
    .faults.map(({ where, what }) => `${where}: ${what}`)
    .join('\n')
}

test('finds calibrations, their readings and the results under them sound', () => {
  // 1 set of weights, 2 routines with 1 and 8 readings, 1 end, 1 calibration, 1 decision, 1 check; session, break, 2 evaluations.
  expect(verify(study(), () => {})).toMatchObject({ faults: [], ledgerEntries: 21 })
})

test.each([
  [
    'a mean',
    'UPDATE calibration_reading SET mean = mean + 1 WHERE reading_id = 3',
    /its readings are not those of its routine/,
  ],
  ['a row', `UPDATE calibration SET rows = json_replace(rows, '$[2].reading', 40100)`, /the residual of its row 3/],
  [
    'a coefficient of a result',
    `UPDATE evaluation SET scale = json_replace(scale, '$.coefficients[1]', 0.02) WHERE evaluation_id = 2`,
    /evaluation 2 of break 1: its curve is not that of calibration 1/,
  ],
  [
    'the calibration of a result',
    `UPDATE evaluation SET scale = json_replace(scale, '$.calibrationId', 5) WHERE evaluation_id = 2`,
    /evaluation 2 of break 1: it names calibration 5, which is not there/,
  ],
  ['a tolerance', `UPDATE weight_set SET weights = '[]'`, /\(weights 1\): the record differs/],
  [
    'a plan',
    `UPDATE calibration_routine SET by = 'x' WHERE routine_id = 1`,
    /\(calibration-routine 1\): the record differs/,
  ],
  ['a reason', `UPDATE calibration_routine_end SET reason = ''`, /\(calibration-routine-end 1\): the record differs/],
  [
    'what is in force',
    'UPDATE calibration_decision SET calibration_id = NULL',
    /\(calibration-decision 1\): the record/,
  ],
  ['a check', 'UPDATE check_weight SET indicated_n = 196.25', /\(check-weight 1\): the record differs/],
  ['a due date', `UPDATE calibration SET due_on = '2040-01-01'`, /\(calibration 1\): the record differs/],
  ['the kind of an entry', `UPDATE ledger SET kind = 'toString' WHERE seq = 1`, /no record is called "toString"/],
])('notices that %s was changed behind the triggers', (_name, text, fault) => {
  expect(faultsAfter(text)).toMatch(fault)
})
