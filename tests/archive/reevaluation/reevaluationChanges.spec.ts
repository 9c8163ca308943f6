import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { writes } from '#archive/methods.ts'
import { reevaluationChanges } from '#archive/reevaluation/reevaluationChanges.ts'
import { beginReevaluation } from '#archive/reevaluation/reevaluations.ts'
import { addSpecimens, correctSpecimen } from '#archive/specimens/specimens.ts'
import type { CurveEvent, EvaluationResult } from '#contract/breaks/evaluation.ts'
import { type ChangesQuery, changesPage, changesQuery } from '#contract/reevaluation/changes.ts'
import { resultBeside, storeReevaluation } from '../storedReevaluation.ts'
import { archiveInMemory, morning, specimenFields, storeBreak } from '../storedStudy.ts'

const event = (kind: CurveEvent['kind'], startTimeS: number, cycles: number | null = null) =>
  ({ kind, startTimeS, endTimeS: startTimeS + 0.1, dropN: 5, dropPercent: 2, cycles }) as CurveEvent
const popIn = event('pop-in', 0.2)

// What the re-evaluation made of each of the breaks; all had 6000 N, the flag "uncalibrated" and a pop-in at 0.2 s before.
const made: Partial<EvaluationResult>[] = [
  { peakN: 6060 },
  { peakN: 5700, flags: ['clipped', 'uncalibrated'] },
  { events: [event('stick-slip', 0.3, 5), popIn] },
  { outcome: 'unloading', peakN: null },
  {},
  // The order of flags says nothing, nor do the last bits of a peak.
  { peakN: 6000 * (1 + 1e-12) },
]
const numbers = ['A-10', 'A-9', 'A-2', 'A-1', 'A-3', null]

function study(): Database.Database {
  const database = archiveInMemory()
  const fields = numbers.filter((number) => number !== null).map((number) => specimenFields(number))
  const specimens = addSpecimens(database, fields, morning, 'bench')
  for (const index of made.keys())
    storeBreak(database, specimens[index]?.specimenId ?? null, undefined, { events: [popIn] })
  storeReevaluation(database, [1, 2, 3, 4, 5, 6], null, (breakId) => resultBeside(database, breakId, made[breakId - 1]))
  return database
}

const page = (database: Database.Database, query: Partial<ChangesQuery> = {}) =>
  reevaluationChanges(database, changesQuery.parse({ reevaluationId: 1, ...query }))
const breaksOf = (database: Database.Database, query: Partial<ChangesQuery> = {}) =>
  page(database, query).rows.map(({ breakId }) => breakId)

test('lays each result beside the one that was in force, and says what differs', () => {
  const { rows, total } = page(study())
  expect(total).toBe(6)
  expect(changesPage.shape.rows.parse(rows)).toEqual(rows)
  const of = (breakId: number) => rows.find((row) => row.breakId === breakId)!
  expect(of(1)).toEqual({
    ...{ breakId: 1, number: 'A-10', adhesive: 'casein C1', overruled: null, setAside: null, setAsideCause: null },
    simulated: true,
    before: {
      ...{ evaluationId: 1, method: 'test 1', outcome: 'break', peakN: 6000, flags: ['uncalibrated'] },
      events: ['pop-in'],
    },
    now: {
      ...{ evaluationId: 7, method: 'test 9', outcome: 'break', peakN: 6060, flags: ['uncalibrated'] },
      events: ['pop-in'],
    },
    ...{ differenceN: 60, differencePercent: 1 },
    changed: { outcome: false, peak: true, flags: false, events: false },
  })
  expect(of(2).changed).toEqual({ outcome: false, peak: true, flags: true, events: false })
  expect(of(3).now.events).toEqual(['pop-in', 'stick-slip 5'])
  expect(of(3).changed).toEqual({ outcome: false, peak: false, flags: false, events: true })
  expect(of(4)).toMatchObject({ differenceN: null, differencePercent: null, changed: { outcome: true, peak: true } })
  for (const same of [5, 6])
    expect(of(same).changed).toEqual({ outcome: false, peak: false, flags: false, events: false })
})

test('gives figures over all results, whatever the page shows', () => {
  for (const query of [{}, { only: 'flags', limit: 1 }] as const)
    expect(page(study(), query).figures).toEqual({
      ...{ results: 6, outcomes: 1, peaks: 3, flags: 1, events: 1, overruled: 0, setAside: 0 },
      // By hand: +1 % and -5 %; the third has no number to compare.
      ...{ meanDifferencePercent: -2, largestDifferencePercent: -5 },
    })
})

test('shows only what is asked for', () => {
  const database = study()
  const only = (what: ChangesQuery['only']) => breaksOf(database, { only: what }).toSorted()
  expect(only('changed')).toEqual([1, 2, 3, 4])
  expect(only('outcome')).toEqual([4])
  expect(only('peak')).toEqual([1, 2, 4])
  expect(only('flags')).toEqual([2])
  expect(only('events')).toEqual([3])
  expect(page(database, { only: 'peak', offset: 1, limit: 1 })).toMatchObject({ total: 3, rows: [{ breakId: 2 }] })
})

test('sorts by number in natural order, or by the size of the difference, with what has none last', () => {
  const database = study()
  expect(breaksOf(database)).toEqual([4, 3, 5, 2, 1, 6])
  expect(breaksOf(database, { descending: true })).toEqual([1, 2, 5, 3, 4, 6])
  expect(breaksOf(database, { sort: 'difference', descending: true }).slice(0, 2)).toEqual([2, 1])
  expect(breaksOf(database, { sort: 'difference', descending: true }).at(-1)).toBe(4)
  expect(breaksOf(database, { sort: 'difference' }).slice(-3)).toEqual([1, 2, 4])
})

test('shows a block by its newest name, and a break where it was moved to', () => {
  const database = study()
  expect(page(database, { limit: 1 }).rows[0]).toMatchObject({ number: 'A-1' })
  correctSpecimen(database, 4, specimenFields('A-0', { adhesive: 'epoxy E4' }), morning, 'bench', 'misread')
  expect(page(database, { limit: 1 }).rows[0]).toMatchObject({ breakId: 4, number: 'A-0', adhesive: 'epoxy E4' })
  const word = { recordedAt: morning, by: 'bench', reason: 'wrong specimen' }
  addDecision(database, { ...word, breakId: 6, kind: 'reassigned', specimenId: 3 })
  expect(page(database).rows.find(({ breakId }) => breakId === 6)).toMatchObject({ number: 'A-2' })
})

test('says where a person spoke of a break, since that stands over either result, and for how long', () => {
  const database = study()
  const word = { recordedAt: morning, by: 'bench', reason: 'cracked there', specimenId: null }
  const row = (breakId: number) => page(database).rows.find((one) => one.breakId === breakId)!
  addDecision(database, { ...word, breakId: 1, kind: 'peak-picked', sample: { timeS: 0.3, reading: 300_000 } })
  addDecision(database, { ...word, breakId: 2, kind: 'set-aside', cause: 'specimen-slipped' })
  expect(row(1)).toMatchObject({
    // The peak of the result in force, which is not adopted yet.
    overruled: {
      ...{ kind: 'peak-picked', by: 'bench', reason: 'cracked there', recordedAt: morning },
      ...{ timeS: 0.3, foundPeakN: 6000 },
    },
    setAside: null,
    ...{ differenceN: 60, changed: { peak: true } },
  })
  expect(row(2)).toMatchObject({ overruled: null, setAside: 'cracked there', setAsideCause: 'specimen-slipped' })
  expect(page(database, { only: 'events' }).figures).toMatchObject({ overruled: 1, setAside: 1 })
  addDecision(database, { ...word, breakId: 1, kind: 'peak-as-found' })
  addDecision(database, { ...word, breakId: 2, kind: 'taken-back' })
  expect(page(database).figures).toMatchObject({ overruled: 0, setAside: 0 })
  expect([row(1).overruled, row(2).setAside, row(2).setAsideCause]).toEqual([null, null, null])
})

test('grows while the re-evaluation runs', () => {
  const database = study()
  const begun = { begunAt: morning, by: 'bench', method: 'test 9', calibrationId: null, settings: {} }
  const { reevaluationId } = beginReevaluation(database, { ...begun, breakIds: [1, 2] })
  expect(page(database, { reevaluationId })).toMatchObject({
    ...{ total: 0, rows: [] },
    figures: { results: 0, meanDifferencePercent: null, largestDifferencePercent: null },
  })
  writes.addReevaluated(database, reevaluationId, [resultBeside(database, 1)])
  expect(page(database, { reevaluationId }).total).toBe(1)
  writes.addReevaluated(database, reevaluationId, [resultBeside(database, 2)])
  expect(page(database, { reevaluationId }).total).toBe(2)
  expect(page(database).total).toBe(6)
})

test('takes flags in another order for the same', () => {
  const database = archiveInMemory()
  storeBreak(database, null, undefined, { flags: ['uncalibrated', 'clipped'] })
  storeReevaluation(database, [1], null, (breakId) =>
    resultBeside(database, breakId, { flags: ['clipped', 'uncalibrated'] }),
  )
  expect(page(database).rows[0]!.changed.flags).toBe(false)
})

test('knows no re-evaluation that is not stored', () => {
  expect(() => page(study(), { reevaluationId: 8 })).toThrow(expect.objectContaining({ code: 'not-found' }))
})
