import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { storeEvaluation } from '#archive/breaks/evaluations.ts'
import { storeRecord } from '#archive/core/recordKind.ts'
import { reevaluationDecisionKind } from '#archive/reevaluation/reevaluationKinds.ts'
import { beginReevaluation, endReevaluation } from '#archive/reevaluation/reevaluations.ts'
import { verify } from '#archive/verify/verify.ts'
import { resultBeside, storeReevaluation } from '../storedReevaluation.ts'
import { archiveInMemory, morning, storeBreak } from '../storedStudy.ts'

// Re-evaluation 1 of breaks 1 and 2, adopted; 2 of break 1, running. The peak of break 2 is picked by hand.
function study(): Database.Database {
  const database = archiveInMemory()
  for (let i = 0; i < 2; i++) storeBreak(database, null)
  storeReevaluation(database, [1, 2], { kind: 'adopted' })
  const begun = { begunAt: morning, by: 'bench', method: 'test 9', calibrationId: null, settings: {} }
  beginReevaluation(database, { ...begun, breakIds: [1] })
  const word = { recordedAt: morning, by: 'bench', reason: 'why', specimenId: null, breakId: 2 }
  addDecision(database, { ...word, kind: 'peak-picked', sample: { timeS: 0.225, reading: 300_000 } })
  return database
}

/** Changes what the triggers protect, as a person with another tool could. */
function faultsAfter(text: string): string {
  const database = study()
  const triggers = database.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").pluck().all()
  for (const name of triggers) database.exec(`DROP TRIGGER ${name}`)
  database.pragma('foreign_keys = OFF')
  database.exec(text)
  return verify(database, () => {})
    .faults.map((fault) => `${fault.where}: ${fault.what}`)
    .join('\n')
}

test('finds a whole archive sound', () => {
  expect(verify(study(), () => {})).toMatchObject({ sound: true, faults: [] })
})

test('misses no result of a break that could not be evaluated again, as its end says so', () => {
  const database = study()
  const begun = { begunAt: morning, by: 'bench', method: 'test 9', calibrationId: null, settings: {} }
  const { reevaluationId } = beginReevaluation(database, { ...begun, breakIds: [1, 2] })
  storeEvaluation(database, { ...resultBeside(database, 1), reevaluationId })
  const problems = [{ breakId: 2, message: 'Its curve is damaged.' }]
  endReevaluation(database, { reevaluationId, endedAt: morning, ending: 'complete', problems })
  expect(verify(database, () => {})).toMatchObject({ sound: true, faults: [] })
})

test.each([
  [
    'a result of a break that nobody asked for',
    `UPDATE reevaluation SET break_ids = '[1]' WHERE reevaluation_id = 1`,
    /re-evaluation 1: it holds a result of break 2/,
  ],
  [
    'a result beside that of another break',
    'UPDATE evaluation SET beside_id = 1 WHERE evaluation_id = 4',
    /re-evaluation 1: its result of break 2 stands beside none of that break/,
  ],
  [
    'a result that is gone',
    'DELETE FROM evaluation WHERE evaluation_id = 4',
    /re-evaluation 1: it is complete, but has no result of break 2/,
  ],
  ['an end that is gone', 'DELETE FROM reevaluation_end', /re-evaluation 1: it was decided on before it had ended/],
  ['another method', `UPDATE reevaluation SET method = 'other'`, /\(reevaluation 1\): the record differs/],
  ['another ending', `UPDATE reevaluation_end SET ending = 'cancelled'`, /\(reevaluation-end 1\): the record differs/],
  [
    'a decision turned round',
    `UPDATE reevaluation_decision SET kind = 'dropped'`,
    /\(reevaluation-decision 1\): the record differs/,
  ],
  [
    'lists that do not follow a decision',
    `UPDATE reevaluation_decision SET kind = 'dropped'`,
    /break 1: the list of breaks shows something else/,
  ],
  [
    'a decision that the ledger does not hold',
    `INSERT INTO reevaluation_decision VALUES (9, 1, '${morning}', 'x', 'y', 'dropped')`,
    /reevaluation-decision 9: the record has no entry in the ledger/,
  ],
  [
    'a result moved out of its re-evaluation',
    'UPDATE evaluation SET reevaluation_id = NULL WHERE evaluation_id = 3',
    /\(evaluation 3\): the record differs/,
  ],
  ['a course that was put in', `UPDATE evaluation SET course = '{}'`, /\(evaluation 1\): /],
  [
    'a sample that is none of the curve',
    'UPDATE decision SET sample_reading = 300001',
    /decision 1 on break 2: its sample at 0.225 s is none of the curve/,
  ],
  [
    'a sample between two of the curve',
    'UPDATE decision SET sample_time_s = 0.2255',
    /decision 1 on break 2: its sample at 0.2255 s is none of the curve/,
  ],
  [
    'a load that is not that of the sample',
    'UPDATE break_current SET peak_n = 3001 WHERE break_id = 2',
    /break 2: its load of 3001 N is not that of the sample named, 3000 N/,
  ],
])('notices %s', (_name, text, fault) => {
  expect(faultsAfter(text)).toMatch(fault)
})

// Entries that are whole in themselves, with a chain that holds, but in an order that the program never allows.

test('notices a result that was entered after the end, whichever trigger let it in', () => {
  const database = study()
  endReevaluation(database, { reevaluationId: 2, endedAt: morning, ending: 'cut-short', problems: [] })
  const trigger = 'evaluation_ends_with_its_reevaluation'
  const text = database.prepare('SELECT sql FROM sqlite_schema WHERE name = ?').pluck().get(trigger) as string
  database.exec(`DROP TRIGGER ${trigger}`)
  storeEvaluation(database, { ...resultBeside(database, 1), reevaluationId: 2 })
  database.exec(text)
  expect(verify(database, () => {}).faults).toEqual([
    { where: 're-evaluation 2', what: 'its result of break 1 was entered after it had ended' },
  ])
})

test('notices a decision that was entered before the end', () => {
  const database = study()
  const word = { recordedAt: morning, by: 'bench', reason: 'compared', kind: 'adopted' } as const
  storeRecord(database, reevaluationDecisionKind, { ...word, reevaluationId: 2 })
  endReevaluation(database, { reevaluationId: 2, endedAt: morning, ending: 'cut-short', problems: [] })
  expect(verify(database, () => {}).faults).toEqual([
    { where: 're-evaluation 2', what: 'it was decided on before it had ended' },
  ])
})
