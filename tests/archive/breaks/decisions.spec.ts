import { expect, test } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { beginBreak } from '#archive/breaks/breaks.ts'
import { addDecision, decisionsOf } from '#archive/breaks/decisions.ts'
import { archiveInMemory, header, morning, session, storeBreak } from '../storedStudy.ts'

const word = { breakId: 1, recordedAt: morning, by: 'bench', reason: 'why', specimenId: null }
const sample = { timeS: 0.2, reading: 266_667 }

function study() {
  const database = archiveInMemory()
  storeBreak(database, null)
  return database
}

test('keeps cause and sample beside the word, and leaves out of the ledger what there is none of', () => {
  const database = study()
  addDecision(database, { ...word, kind: 'set-aside', cause: 'wrong-block' })
  addDecision(database, { ...word, kind: 'taken-back' })
  addDecision(database, { ...word, kind: 'premature-failure', sample })
  expect(decisionsOf(database, 1).map(({ kind, cause, sample: named }) => [kind, cause, named])).toEqual([
    ['set-aside', 'wrong-block', null],
    ['taken-back', null, null],
    ['premature-failure', null, sample],
  ])
  const contents = database.prepare("SELECT content FROM ledger WHERE kind = 'decision' ORDER BY seq").pluck().all()
  expect(contents.map((text) => Object.keys(JSON.parse(String(text))).slice(1))).toEqual([
    ['by', 'cause', 'decisionId', 'kind', 'reason', 'recordedAt', 'specimenId'],
    ['by', 'decisionId', 'kind', 'reason', 'recordedAt', 'specimenId'],
    ['by', 'decisionId', 'kind', 'reason', 'recordedAt', 'sample', 'specimenId'],
  ])
})

test('refuses a word that lacks its sample, or has what does not belong to it', () => {
  const database = study()
  expect(() => addDecision(database, { ...word, kind: 'peak-picked' })).toThrow(/sample/)
  expect(() => addDecision(database, { ...word, kind: 'peak-as-found', sample })).toThrow(/sample/)
  expect(() => addDecision(database, { ...word, kind: 'taken-back', cause: 'other' })).toThrow(/cause/)
  expect(() => addDecision(database, { ...word, kind: 'peak-picked', sample, specimenId: 1 })).toThrow(/specimen/)
  expect(decisionsOf(database, 1)).toEqual([])
})

test('knows no word on a break that is not there', () => {
  expect(() => addDecision(study(), { ...word, breakId: 9, kind: 'set-aside' })).toThrow(
    expect.objectContaining({ code: 'not-found', message: expect.stringContaining('9') }),
  )
})

test('overrules no peak of a capture that runs', () => {
  const database = study()
  const { sessionId } = beginSession(database, session)
  const { breakId } = beginBreak(database, header(sessionId, null))
  expect(() => addDecision(database, { ...word, breakId, kind: 'peak-picked', sample })).toThrow(
    expect.objectContaining({ code: 'conflict' }),
  )
})
