import { join } from 'node:path'
import { expect, test } from 'vitest'
import { writes } from '#archive/methods.ts'
import { openHere } from '#archive/openHere.ts'
import {
  beginReevaluation,
  decideReevaluation,
  endReevaluation,
  reevaluationOf,
  reevaluations,
} from '#archive/reevaluation/reevaluations.ts'
import { verify } from '#archive/verify/verify.ts'
import { type ReevaluationEnd, reevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import { decide, resultBeside, storeReevaluation } from '../storedReevaluation.ts'
import { archiveInMemory, morning, storeBreak, temporaryFolder } from '../storedStudy.ts'

const begun = { begunAt: morning, by: 'bench', method: 'test 9', calibrationId: null, settings: { endShare: 0.1 } }
const end: Omit<ReevaluationEnd, 'reevaluationId'> = { endedAt: morning, ending: 'complete', problems: [] }

function study(breaks = 2) {
  const database = archiveInMemory()
  for (let i = 0; i < breaks; i++) storeBreak(database, null)
  return database
}

test('keeps how it was begun, what it found, how it ended and what was decided', () => {
  const database = study()
  const { reevaluationId } = beginReevaluation(database, { ...begun, breakIds: [1, 2] })
  writes.addReevaluated(database, reevaluationId, [resultBeside(database, 1)])
  expect(reevaluationOf(database, reevaluationId)).toEqual({
    ...{ reevaluationId, begunAt: morning, by: 'bench', method: 'test 9', calibrationId: null },
    ...{ settings: { endShare: 0.1 }, breaks: 2, evaluated: 1, end: null, decisions: [] },
  })
  const problems = [{ breakId: 2, message: 'it is damaged' }]
  endReevaluation(database, { reevaluationId, ...end, problems })
  const { summary } = decide(database, reevaluationId, 'adopted')
  expect(reevaluationSummary.parse(summary)).toEqual(summary)
  expect(summary).toMatchObject({ evaluated: 1, end: { ending: 'complete', problems } })
  expect(summary.decisions).toMatchObject([{ kind: 'adopted', by: 'bench', reason: 'compared' }])
  const kinds = database.prepare('SELECT kind FROM ledger ORDER BY seq DESC LIMIT 4').pluck().all()
  expect(kinds).toEqual(['reevaluation-decision', 'reevaluation-end', 'evaluation', 'reevaluation'])
  expect(verify(database, () => {}).faults).toEqual([])
})

test('lists the newest first', () => {
  const database = study()
  for (let i = 0; i < 3; i++) storeReevaluation(database, [1], null)
  expect(reevaluations(database).rows.map(({ reevaluationId }) => reevaluationId)).toEqual([3, 2, 1])
})

test('begins only with what is there', () => {
  const database = study()
  expect(() => beginReevaluation(database, { ...begun, breakIds: [1, 7] })).toThrow(/no break 7/)
  expect(() => beginReevaluation(database, { ...begun, breakIds: [1], calibrationId: 4 })).toThrow(/no calibration 4/)
  expect(reevaluations(database)).toEqual({ rows: [] })
})

test('stores a batch whole or not at all', () => {
  const database = study()
  const { reevaluationId } = beginReevaluation(database, { ...begun, breakIds: [1, 2] })
  const one = resultBeside(database, 1)
  expect(() => writes.addReevaluated(database, reevaluationId, [one, one])).toThrow(/never replaced/)
  expect(() => writes.addReevaluated(database, reevaluationId, [one, { ...one, breakId: 2, besideId: null }])).toThrow(
    RangeError,
  )
  expect(reevaluationOf(database, reevaluationId).evaluated).toBe(0)
})

test('takes nothing after its end, and ends once', () => {
  const database = study()
  const reevaluationId = storeReevaluation(database, [1], null)
  expect(() => writes.addReevaluated(database, reevaluationId, [resultBeside(database, 2)])).toThrow(/has ended/)
  expect(() => endReevaluation(database, { reevaluationId, ...end })).toThrow(/has ended/)
  expect(() => endReevaluation(database, { reevaluationId: 9, ...end })).toThrow(/no re-evaluation 9/)
})

test('is decided on only when it has ended with results, and dropped no second time', () => {
  const database = study()
  const { reevaluationId } = beginReevaluation(database, { ...begun, breakIds: [1] })
  expect(() => decide(database, reevaluationId, 'adopted')).toThrow(/still running/)
  endReevaluation(database, { reevaluationId, ...end, ending: 'cancelled' })
  expect(() => decide(database, reevaluationId, 'adopted')).toThrow(/no results/)
  const left = storeReevaluation(database, [1], null)
  decide(database, left, 'dropped')
  expect(() => decide(database, left, 'dropped')).toThrow(/not in force/)
  const other = storeReevaluation(database, [1], null)
  decide(database, other, 'adopted')
  decide(database, other, 'adopted')
  decide(database, other, 'dropped')
  expect(() => decide(database, other, 'dropped')).toThrow(/not in force/)
  expect(reevaluationOf(database, other).decisions.map(({ kind }) => kind)).toEqual(['adopted', 'adopted', 'dropped'])
  const unsigned = { reevaluationId: other, kind: 'adopted', recordedAt: morning, by: 'bench', reason: '' } as const
  expect(() => decideReevaluation(database, unsigned)).toThrow(/CHECK constraint/)
})

test('is cut short by the next opening when its program died', () => {
  const path = join(temporaryFolder(), 'study.breakledger')
  const open = (instant: string) => openHere({ path, mode: 'write', program: 'test', instant })
  const first = open(morning)
  storeBreak(first.database, null)
  const { reevaluationId } = beginReevaluation(first.database, { ...begun, breakIds: [1] })
  writes.addReevaluated(first.database, reevaluationId, [resultBeside(first.database, 1)])
  first.close()
  const later = '2031-05-03T08:00:00.000Z'
  const second = open(later)
  const summary = reevaluationOf(second.database, reevaluationId)
  expect(summary).toMatchObject({ evaluated: 1, end: { ending: 'cut-short', endedAt: later, problems: [] } })
  expect(verify(second.database, () => {}).faults).toEqual([])
  // What there is may still be adopted.
  expect(decide(second.database, reevaluationId, 'adopted').breakIds).toEqual([1])
  second.close()
  const third = open('2031-05-04T08:00:00.000Z')
  expect(reevaluationOf(third.database, reevaluationId).end).toEqual(summary.end)
  third.close()
})
