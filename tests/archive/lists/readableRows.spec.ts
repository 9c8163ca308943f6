import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { readSession } from '#archive/bench/sessions.ts'
import { addAssessment } from '#archive/breaks/assessments.ts'
import { readBreak } from '#archive/breaks/breakRecords.ts'
import { addDecision } from '#archive/breaks/decisions.ts'
import { calibrationDecided, calibrationDecisions } from '#archive/calibration/calibrationDecisions.ts'
import { addCalibration, calibrations } from '#archive/calibration/calibrations.ts'
import { addCheckWeight, checkWeights } from '#archive/calibration/checkWeights.ts'
import { listBreaks } from '#archive/lists/lists.ts'
import { readableRows } from '#archive/lists/readableRows.ts'
import { reevaluationOf, reevaluations } from '#archive/reevaluation/reevaluations.ts'
import { listSpecimens, specimen } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import { listQuery } from '#contract/listQuery.ts'
import { specimenProcedures } from '#contract/specimens/procedures.ts'
import { madeCalibration, storeCalibrations } from '../storedCalibration.ts'
import { storeReevaluation } from '../storedReevaluation.ts'
import { archiveInMemory, morning, specimenFields, storeBreak } from '../storedStudy.ts'

const all = listQuery.parse({})

/** Three specimens, the second of them broken, and two breaks more. */
function study(): Database.Database {
  const database = archiveInMemory()
  const numbers = ['C1-LL-1', 'C1-LL-2', 'C1-LL-3']
  addSpecimens(
    database,
    numbers.map((number) => specimenFields(number)),
    morning,
    'bench',
  )
  for (const specimenId of [null, 2, null]) storeBreak(database, specimenId)
  return database
}

function plant(database: Database.Database, table: string, text: string): void {
  database.exec(`DROP TRIGGER ${table}_is_never_changed; PRAGMA ignore_check_constraints = ON; ${text}`)
}

test('a specimen that is not as it should be hides no other, and is named with what is wrong', () => {
  const database = study()
  plant(database, 'specimen_revision', 'UPDATE specimen_revision SET area_mm2 = -600 WHERE specimen_id = 2')
  const { total, rows, unreadable } = listSpecimens(database, all)
  expect(total).toBe(3)
  expect(rows.map(({ fields }) => fields.number)).toEqual(['C1-LL-1', 'C1-LL-3'])
  expect(unreadable).toEqual([{ record: 'specimen 2', because: expect.stringMatching(/area/) }])
})

test.each([
  ['is no JSON', "UPDATE evaluation SET flags = '[' WHERE break_id = 2"],
  ['knows no such word', `UPDATE evaluation SET flags = '["bent"]' WHERE break_id = 2`],
  ['names a calibration that is not there', `UPDATE evaluation SET scale = '{"kind":"calibration","calibrationId":7}'`],
])('a break whose result %s hides no other', (_name, text) => {
  const database = study()
  plant(database, 'evaluation', `${text.includes('WHERE') ? text : `${text} WHERE break_id = 2`}`)
  const { rows, unreadable } = listBreaks(database, listQuery.parse({ sort: 'startedAt' }))
  expect(rows.map(({ breakId }) => breakId)).toEqual([1, 3])
  expect(unreadable?.map(({ record }) => record)).toEqual(['break 2'])
})

test('verify finds a record that the chain holds just so, but that cannot be read', () => {
  const database = study()
  plant(database, 'specimen_revision', 'UPDATE specimen_revision SET area_mm2 = -600 WHERE specimen_id = 2')
  database.exec(`DROP TRIGGER ledger_is_never_changed;
    UPDATE ledger SET content = json_set(content, '$.fields.areaMm2', -600) WHERE kind = 'specimen' AND record_id = 2`)
  expect(verify(database, () => {}).faults).toContainEqual({
    where: expect.stringMatching(/^ledger entry \d+ \(specimen 2\)$/),
    what: expect.stringMatching(/cannot be read: .*areaMm2/),
  })
})

test('whoever added a specimen may have a longer name than can be typed now, from an older program', () => {
  const database = study()
  addSpecimens(database, [specimenFields('C1-LL-4')], morning, 'x'.repeat(5000))
  const page = listSpecimens(database, all)
  expect(page.unreadable).toBeUndefined()
  expect(specimenProcedures['specimens.list'].output.parse(page).rows).toHaveLength(4)
})

test('a bonded area so small that the strength is beyond every number leaves the list readable', () => {
  const database = study()
  addSpecimens(database, [specimenFields('C1-LL-4', { areaMm2: 5e-324 })], morning, 'bench')
  storeBreak(database, 4)
  const { rows, unreadable } = listBreaks(database, listQuery.parse({ sort: 'startedAt' }))
  expect(unreadable).toBeUndefined()
  expect(rows.at(-1)).toMatchObject({ number: 'C1-LL-4', strengthMPa: null })
})

test('a calibration, a decision and a check that cannot be read hide no others, and what is in force stays known', () => {
  const database = study()
  storeCalibrations(database)
  addCalibration(database, madeCalibration({ name: 'June', supersedes: 1 }), null)
  const { checkId: _checkId, ...check } = checkWeights(database, 1).rows[0]!
  addCheckWeight(database, check)
  plant(database, 'calibration', "UPDATE calibration SET rows = '[' WHERE calibration_id = 2")
  plant(database, 'check_weight', 'UPDATE check_weight SET count = -1 WHERE check_id = 1')
  plant(database, 'calibration_decision', 'UPDATE calibration_decision SET recorded_at = 5')
  expect(calibrations(database)).toMatchObject({
    rows: [{ calibrationId: 1 }],
    unreadable: [{ record: 'calibration 2' }],
  })
  expect(checkWeights(database, 1)).toMatchObject({ rows: [{ checkId: 2 }], unreadable: [{ record: 'check 1' }] })
  expect(calibrationDecisions(database)).toMatchObject({
    rows: [],
    unreadable: [{ because: expect.stringMatching(/recordedAt/) }],
  })
  expect(calibrationDecided(database)).toBe(1)
})

test('a re-evaluation that cannot be read hides no other', () => {
  const database = study()
  for (let i = 0; i < 3; i++) storeReevaluation(database, [1], null)
  plant(database, 'reevaluation', "UPDATE reevaluation SET settings = '{' WHERE reevaluation_id = 2")
  const { rows, unreadable } = reevaluations(database)
  expect(rows.map(({ reevaluationId }) => reevaluationId)).toEqual([3, 1])
  expect(unreadable).toMatchObject([{ record: 're-evaluation 2' }])
  expect(() => reevaluationOf(database, 2)).toThrow()
})

test('the page of a break shows all of it that can be read, and names the rest', () => {
  const database = study()
  const said = { breakId: 2, recordedAt: morning, by: 'bench' }
  addAssessment(database, { ...said, woodFailurePercent: 40, failurePattern: null, note: '' })
  addDecision(database, {
    ...said,
    kind: 'set-aside',
    reason: 'slipped',
    cause: 'other',
    specimenId: null,
    sample: null,
  })
  plant(database, 'assessment', 'UPDATE assessment SET wood_failure_percent = 400')
  plant(database, 'decision', "UPDATE decision SET kind = 'forgotten'")
  const page = readBreak(database, 2, readSession)
  expect(page).toMatchObject({ evaluations: [{ breakId: 2 }], assessments: [], decisions: [] })
  expect(page.unreadable?.map(({ record }) => record)).toEqual(['assessment 1', 'decision 1'])
})

test('the page of a break is refused where its result in force cannot be read, since all else is shown under that', () => {
  const database = study()
  plant(database, 'evaluation', `UPDATE evaluation SET settings = '{"preTriggerS":-1}' WHERE break_id = 2`)
  expect(() => readBreak(database, 2, readSession)).toThrow(/preTriggerS/)
})

test('the page of a break leaves out a result that is not in force, and the uncertainty under a calibration that is gone', () => {
  const database = study()
  for (let i = 0; i < 2; i++) storeReevaluation(database, [2], null)
  plant(
    database,
    'evaluation',
    `UPDATE evaluation SET settings = '[' WHERE evaluation_id = 4;
     UPDATE evaluation SET scale = '{"kind":"calibration","calibrationId":7,"coefficients":[0,0.01]}' WHERE evaluation_id = 5`,
  )
  const { evaluations, unreadable } = readBreak(database, 2, readSession)
  expect(evaluations.map(({ evaluationId }) => evaluationId)).toEqual([2, 5])
  expect(unreadable?.map(({ record }) => record)).toEqual(['evaluation 4', 'uncertainty of evaluation 5'])
})

test('the page of a specimen shows its other breaks and versions, and names those that cannot be read', () => {
  const database = study()
  storeBreak(database, 2)
  plant(database, 'evaluation', "UPDATE evaluation SET flags = '[' WHERE break_id = 4")
  const page = specimen(database, 2)
  expect(page.breaks.map(({ breakId }) => breakId)).toEqual([2])
  expect(page).toMatchObject({ current: { specimenId: 2, breakInForce: null }, unreadable: [{ record: 'break 4' }] })
  expect(specimenProcedures['specimens.get'].output.safeParse(page).success).toBe(true)
})

test('what is no damage is thrown', () => {
  const fails = () => {
    throw new TypeError('a fault of the program')
  }
  expect(() => readableRows('specimen', [1], fails)).toThrow(TypeError)
})
