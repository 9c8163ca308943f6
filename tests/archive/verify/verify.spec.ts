import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { addAssessment } from '#archive/breaks/assessments.ts'
import { appendSamples, beginBreak } from '#archive/breaks/breaks.ts'
import { addDecision } from '#archive/breaks/decisions.ts'
import { addEvaluation } from '#archive/breaks/evaluations.ts'
import { addSpecimens, correctSpecimen } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import type { Progress } from '#contract/tasks.ts'
import { behindTheTriggers } from '../behindTheTriggers.ts'
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

const curve = rampAndFall(2000, 600_000)

function study(): Database.Database {
  const database = archiveInMemory()
  addSpecimens(database, [specimenFields('C1-LL-1'), specimenFields('C1-LL-2')], morning, 'bench')
  storeBreak(database, 1, curve)
  storeBreak(database, 2, curve)
  const decision = { recordedAt: morning, by: 'bench', reason: 'slipped', specimenId: null }
  addDecision(database, { ...decision, breakId: 2, kind: 'set-aside' })
  const assessment = { recordedAt: morning, by: 'bench', failurePattern: 'SF' as const, note: 'half \ud800 pair' }
  addAssessment(database, { ...assessment, breakId: 1, woodFailurePercent: 75 })
  correctSpecimen(database, 2, specimenFields('C1-LL-2', { areaMm2: 610.1 }), morning, 'bench', 'measured again')
  return database
}

function faultsAfter(text: string): string[] {
  const database = study()
  behindTheTriggers(database, text)
  const report = verify(database, () => {})
  expect(report.sound).toBe(report.faults.length === 0)
  return report.faults.map((fault) => `${fault.where}: ${fault.what}`)
}

test('finds a whole archive sound and counts what it looked at', () => {
  expect(verify(study(), () => {})).toEqual({
    sound: true,
    // The format, 7 names (bench, adhesive, lot, wood, joint type, exposure, place), 2 specimens, 2 sessions, 2 breaks, 2 evaluations, a decision, an assessment, a correction
    ledgerEntries: 19,
    breaks: 2,
    curves: 2,
    samples: 4000,
    head: { count: 19, hash: expect.stringMatching(/^[0-9a-f]{64}$/), instant: morning },
    faults: [],
  })
})

test('finds a capture that runs sound too', () => {
  const database = study()
  const { sessionId } = beginSession(database, session)
  const { breakId } = beginBreak(database, header(sessionId, 1))
  appendSamples(database, breakId, rampAndFall(50, 100))
  expect(verify(database, () => {})).toMatchObject({ sound: true, breaks: 3, samples: 4050 })
})

test('tells how far it is', () => {
  const seen: Progress[] = []
  verify(study(), (progress) => seen.push(progress))
  expect(seen.map(({ done, total }) => [done, total])).toEqual([
    [0, 2],
    [1, 2],
    [2, 2],
  ])
})

test('names break and block when one byte of a curve is another', () => {
  const database = study()
  const { readings } = database.prepare('SELECT readings FROM curve_block WHERE break_id = 2').get() as {
    readings: Buffer
  }
  readings[700]! ^= 4
  behindTheTriggers(database, `UPDATE curve_block SET readings = x'${readings.toString('hex')}' WHERE break_id = 2`)
  expect(verify(database, () => {}).faults).toEqual([
    { where: 'break 2', what: 'The curve of break 2 is damaged in block 0: it does not match its SHA-256.' },
  ])
})

test('is not taken in by a curve whose own checksum was mended', () => {
  const mended = faultsAfter('UPDATE curve_block SET first_mantissa = first_mantissa + 1 WHERE break_id = 1')
  expect(mended).toContain('break 1: its curve does not match the recorded SHA-256')
  expect(mended.join()).toMatch(/evaluation 1 of break 1: its peak of 6000 N is not the force at/)
})

test.each([
  [
    'an area',
    'UPDATE specimen_revision SET area_mm2 = 500 WHERE revision_id = 1',
    /\(specimen 1\): the record differs/,
  ],
  ['a peak', 'UPDATE evaluation SET peak_n = 9000 WHERE evaluation_id = 1', /\(evaluation 1\): the record differs/],
  ['a flag', `UPDATE evaluation SET flags = '["clipped"]'`, /\(evaluation 2\): the record differs/],
  ['a tare', `UPDATE break_header SET started_at = '2030-01-01T00:00:00.000Z'`, /\(break 1\): the record differs/],
  ['wood failure', 'UPDATE assessment SET wood_failure_percent = 70', /\(assessment 1\): the record differs/],
  ['a reason', `UPDATE decision SET reason = 'fixture touched'`, /\(decision 1\): the record differs/],
  ['a source', `UPDATE capture_session SET source = 'COM3'`, /\(session 1\): the record differs/],
  [
    'a specimen that is gone',
    'DELETE FROM specimen_revision WHERE revision_id = 3',
    /\(specimen 3\): its record cannot be read: There is no revision 3/,
  ],
  ['a break that is gone', 'DELETE FROM break_header WHERE break_id = 2', /\(break 2\): its record cannot be read/],
  [
    'a ledger entry that is gone',
    'DELETE FROM ledger WHERE seq = 4',
    /entry 5 .*: the entries between 3 and 5 are gone/,
  ],
  [
    'a last entry that is gone',
    'DELETE FROM ledger WHERE seq = 19',
    /specimen 3: the record has no entry in the ledger/,
  ],
  [
    'an entry that was rewritten',
    `UPDATE ledger SET content = replace(content, '600', '700') WHERE seq = 9`,
    /entry 9 .*: its content does not match its hash/,
  ],
  [
    'a missing block',
    'DELETE FROM curve_block WHERE break_id = 1',
    /break 1: its curve has 0 samples, recorded are 2000/,
  ],
  ['a list that lies', `UPDATE break_current SET set_aside = NULL`, /break 2: the list of breaks shows something else/],
  ['a list that hides', 'DELETE FROM specimen_current WHERE specimen_id = 1', /specimen 1: .* leaves it out/],
  [
    'a dangling pointer',
    'UPDATE assessment SET break_id = 77',
    /table assessment, row 1: it points to a row of break_header/,
  ],
  ['an unknown setting', `UPDATE evaluation SET settings = '{}' WHERE evaluation_id = 1`, /\(evaluation 1\)/],
])('notices %s', (_name, text, fault) => {
  expect(faultsAfter(text).join('\n')).toMatch(fault)
})

test('notices when an entry and its hash were rewritten together', () => {
  const database = study()
  const { hash } = database.prepare('SELECT hash FROM ledger WHERE seq = 5').get() as { hash: string }
  behindTheTriggers(
    database,
    `UPDATE ledger SET hash = '${hash.replace(/^./, (c) => (c === '0' ? '1' : '0'))}' WHERE seq = 5`,
  )
  const faults = verify(database, () => {}).faults
  expect(faults.map((fault) => fault.where.slice(0, 14))).toEqual(['ledger entry 5', 'ledger entry 6'])
})

test.each([
  ['at a time that no sample has', { peakTimeS: 0.0005 }, /is no sample of the curve/],
  ['that the curve does not reach', { peakN: 6000.01 }, /is not the force at/],
])('notices a peak %s', (_name, change, fault) => {
  const database = study()
  addEvaluation(database, { ...evaluationOf(curve, change), breakId: 1 })
  expect(verify(database, () => {}).faults).toEqual([
    { where: 'evaluation 3 of break 1', what: expect.stringMatching(fault) },
  ])
})
