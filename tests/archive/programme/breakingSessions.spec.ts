import type Database from 'better-sqlite3'
import { beforeEach, describe, expect, it } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { storeRecord } from '#archive/core/recordKind.ts'
import { inTransaction } from '#archive/core/transaction.ts'
import { refreshSpecimens } from '#archive/lists/refresh.ts'
import {
  addBreakingEvent,
  beginBreakingSession,
  breakingSession,
  breakingSessions,
} from '#archive/programme/breakingSessions.ts'
import { pullDecisionKind } from '#archive/programme/studyKinds.ts'
import { pressQueue, specimen, waitingSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { withdrawalKind } from '#archive/specimens/withdrawals.ts'
import { verify } from '#archive/verify/verify.ts'
import { breakingRecord } from '#contract/programme/breakingProcedures.ts'
import { glueBlocks, storeBlocks, storeStudy } from '../storedProgramme.ts'
import { archiveInMemory, morning, specimenFields, storeBreak } from '../storedStudy.ts'

let database: Database.Database
beforeEach(() => {
  database = archiveInMemory()
})

const signed = { recordedAt: morning, by: 'bench' }
const begin = (asked: Partial<Parameters<typeof beginBreakingSession>[1]>) =>
  beginBreakingSession(database, {
    ...{ startedAt: morning, by: 'bench', title: 'three months', pulls: [], specimenIds: [], seed: 1, ...asked },
  })
const event = (
  breakingSessionId: number,
  kind: 'skipped' | 'ended' | 'reopened',
  specimenId: number | null = null,
  note = '',
) => addBreakingEvent(database, { ...signed, breakingSessionId, kind, specimenId, note })
const withdraw = (specimenId: number, kind: 'withdrawn' | 'taken-back' = 'withdrawn') =>
  inTransaction(database, () => {
    storeRecord(database, withdrawalKind, { ...signed, reason: 'lost', specimenId, kind })
    refreshSpecimens(database, [specimenId])
  })
const queued = (after: number | null = null) => pressQueue(database, after, 10).rows.map((row) => row.specimenId)

/** A study with four glued blocks of age 3 and one of age 0; the specimens of age 3 in the order to break them. */
function pulled() {
  const studyId = storeStudy(database)
  const blocks = storeBlocks(database, studyId, [
    { ageMonths: 3, breakingOrder: 2 },
    { ageMonths: 3, breakingOrder: 0 },
    { ageMonths: 0, breakingOrder: 0 },
    { ageMonths: 3, breakingOrder: 3 },
    { ageMonths: 3, breakingOrder: 1 },
    { ageMonths: 3, breakingOrder: 4 },
  ])
  const [third, first, young, fourth, second] = glueBlocks(database, studyId, blocks.slice(0, 5))
  const pull = { studyId, gluedOn: '2031-03-01', ageMonths: 3 }
  return { pull, inOrder: [first!, second!, third!, fourth!], young: young!, unglued: blocks[5]! }
}

describe('a breaking session', () => {
  it('has what waits of its pull in the kept random order: none of another age, none unglued, broken or withdrawn', () => {
    const { pull, inOrder } = pulled()
    storeBreak(database, inOrder[0]!)
    withdraw(inOrder[2]!)
    expect(begin({ pulls: [pull] }).specimenIds).toEqual([inOrder[1], inOrder[3]])
  })

  it('takes a pull of every day of glue-up, or of one', () => {
    const { pull, inOrder, unglued } = pulled()
    const [later] = glueBlocks(database, pull.studyId, [unglued], '2031-03-08')
    expect(begin({ pulls: [{ ...pull, gluedOn: '2031-03-08' }] }).specimenIds).toEqual([later])
    event(1, 'ended')
    expect(begin({ pulls: [{ ...pull, gluedOn: null }] }).specimenIds).toEqual([...inOrder, later])
  })

  it('takes so many spares of each series for a pull that was added to the plan', () => {
    const { pull } = pulled()
    const spares = storeBlocks(database, pull.studyId, [
      { ageMonths: null, breakingOrder: 5 },
      { ageMonths: null, breakingOrder: 1 },
      { ageMonths: null, breakingOrder: 3 },
      { ageMonths: null, breakingOrder: 2, adhesive: 'resorcinol R2' },
    ])
    const glued = glueBlocks(database, pull.studyId, spares)
    const added = { ...pull, ageMonths: 4 }
    expect(() => begin({ pulls: [added] })).toThrow(/Nothing of that waits/)
    inTransaction(database, () =>
      storeRecord(database, pullDecisionKind, {
        ...{ ...signed, ...added, reason: 'a flood', kind: 'added', dueOn: '2031-07-01', blocksPerSeries: 2 },
      }),
    )
    expect(begin({ pulls: [added] }).specimenIds).toEqual([glued[1], glued[3], glued[2]])
  })

  it('takes no more spares for an added pull that was begun before than it lacks', () => {
    const { pull } = pulled()
    const spares = [0, 1, 2, 3].map((breakingOrder) => ({ ageMonths: null, breakingOrder }))
    const glued = glueBlocks(database, pull.studyId, storeBlocks(database, pull.studyId, spares))
    const added = { ...pull, ageMonths: 4 }
    inTransaction(database, () =>
      storeRecord(database, pullDecisionKind, {
        ...{ ...signed, ...added, reason: 'a flood', kind: 'added', dueOn: '2031-07-01', blocksPerSeries: 2 },
      }),
    )
    const { breakingSessionId } = begin({ pulls: [added] })
    storeBreak(database, glued[0]!)
    event(breakingSessionId, 'ended')
    expect(begin({ pulls: [added] }).specimenIds).toEqual([glued[1]])
    storeBreak(database, glued[1]!)
    event(breakingSessionId + 1, 'ended')
    expect(() => begin({ pulls: [added] })).toThrow(/Nothing of that waits/)
  })

  it('breaks specimens of no study in an order that is drawn and kept, after the blocks of studies and each once', () => {
    const { pull, inOrder, young } = pulled()
    const own = addSpecimens(
      database,
      Array.from({ length: 8 }, (_, at) => specimenFields(`K-${at}`)),
      morning,
      '',
    ).map(({ specimenId }) => specimenId)
    const { specimenIds } = begin({ pulls: [pull], specimenIds: [...own, young, ...own] })
    expect(specimenIds.slice(0, 5)).toEqual([...inOrder, young])
    expect(specimenIds.slice(5)).not.toEqual(own)
    expect(specimenIds.slice(5).toSorted((a, b) => a - b)).toEqual(own)
    event(1, 'ended')
    expect(begin({ specimenIds: own, seed: 1 }).specimenIds).toEqual(specimenIds.slice(5))
    event(2, 'ended')
    expect(begin({ specimenIds: own, seed: 2 }).specimenIds).not.toEqual(specimenIds.slice(5))
  })

  it('refuses a specimen that broke or was withdrawn, and a session of nothing', () => {
    const { pull, inOrder } = pulled()
    storeBreak(database, inOrder[0]!)
    withdraw(inOrder[1]!)
    expect(() => begin({ specimenIds: [inOrder[0]!] })).toThrow(/broke already/)
    expect(() => begin({ specimenIds: [inOrder[1]!, inOrder[2]!] })).toThrow(/was withdrawn/)
    expect(() => begin({ pulls: [{ ...pull, ageMonths: 6 }] })).toThrow(/Nothing of that waits/)
    expect(() => begin({ specimenIds: [inOrder[2]!, 4711] })).toThrow(/no specimen 4711/)
    expect(breakingSessions(database)).toEqual([])
  })

  it('is the only one that is open, until it is ended; and can be opened again', () => {
    const { pull, young } = pulled()
    const { breakingSessionId } = begin({ pulls: [pull] })
    expect(() => begin({ specimenIds: [young] })).toThrow(/still open/)
    expect(event(breakingSessionId, 'ended').endedAt).toBe(morning)
    expect(() => event(breakingSessionId, 'ended')).toThrow(/is ended/)
    expect(event(breakingSessionId, 'reopened').endedAt).toBeNull()
    expect(() => event(breakingSessionId, 'reopened')).toThrow(/open already/)
  })
})

describe('the queue of the press', () => {
  it('is that of the open session, and of all that wait where none is open', () => {
    const { pull, inOrder } = pulled()
    const all = waitingSpecimens(database, null, 10).rows.map((row) => row.specimenId)
    expect(queued()).toEqual(all)
    const { breakingSessionId } = begin({ pulls: [pull] })
    expect(queued()).toEqual(inOrder)
    expect(queued(inOrder[1])).toEqual(inOrder.slice(2))
    event(breakingSessionId, 'ended')
    expect(queued()).toEqual(all)
  })

  it('passes over what was broken, skipped or withdrawn meanwhile, and counts it', () => {
    const { pull, inOrder } = pulled()
    const { breakingSessionId } = begin({ pulls: [pull] })
    storeBreak(database, inOrder[0]!)
    event(breakingSessionId, 'skipped', inOrder[1], 'glue on the bearing face')
    withdraw(inOrder[2]!)
    expect(queued()).toEqual([inOrder[3]])
    expect(pressQueue(database, null, 0).session).toEqual({
      ...{ breakingSessionId, title: 'three months', specimens: 4, broken: 1, skipped: 1, withdrawn: 1 },
    })
    withdraw(inOrder[2]!, 'taken-back')
    expect(queued()).toEqual([inOrder[2], inOrder[3]])
  })

  it('offers nothing that was withdrawn where no session is open either', () => {
    const { inOrder } = pulled()
    withdraw(inOrder[0]!)
    expect(queued()).not.toContain(inOrder[0])
    expect(waitingSpecimens(database, null, 10).total).toBe(4)
  })
})

describe('what became of a session', () => {
  it('says of each specimen whether it broke, with its breaks, was skipped and why, or waits', () => {
    const { pull, inOrder } = pulled()
    const { breakingSessionId } = begin({ pulls: [pull] })
    const popIn = { kind: 'pop-in' as const, startTimeS: 0.1, endTimeS: 0.1, dropN: 9, dropPercent: 3, cycles: null }
    storeBreak(database, inOrder[0]!, undefined, { events: [{ ...popIn, percentOfPeak: 60 } as never] })
    event(breakingSessionId, 'skipped', inOrder[1], 'glue on the bearing face')
    const record = breakingSession(database, breakingSessionId, specimen)
    expect(breakingRecord.parse(record)).toEqual(record)
    expect(record).toMatchObject({ broken: 1, skipped: 1, withdrawn: 0 })
    expect(record.members.map(({ state }) => state)).toEqual(['broken', 'skipped', 'waiting', 'waiting'])
    expect(record.members[0]).toMatchObject({ studyId: pull.studyId, ageMonths: 3, spares: 0 })
    expect(record.members[0]!.breaks[0]!.events).toEqual([{ kind: 'pop-in', percentOfPeak: 60 }])
    expect(record.members[1]!.skipped).toEqual({ ...signed, note: 'glue on the bearing face' })
  })

  it('counts a specimen that was skipped and broken after all as broken', () => {
    const { pull, inOrder } = pulled()
    const { breakingSessionId } = begin({ pulls: [pull] })
    event(breakingSessionId, 'skipped', inOrder[1])
    storeBreak(database, inOrder[1]!)
    expect(breakingSessions(database)[0]).toMatchObject({ broken: 1, skipped: 0 })
    expect(breakingSession(database, breakingSessionId, specimen).members[1]!.skipped).toBeNull()
  })

  it('asks for another one where a break was set aside, and knows how many spares of its series wait', () => {
    const { pull, inOrder } = pulled()
    const spares = storeBlocks(database, pull.studyId, [
      { ageMonths: null },
      { ageMonths: null },
      { ageMonths: null, adhesive: 'resorcinol R2' },
    ])
    const [spare] = glueBlocks(database, pull.studyId, spares)
    const { breakingSessionId } = begin({ pulls: [pull] })
    const breakId = storeBreak(database, inOrder[0]!)
    const because = { reason: 'slipped', cause: 'specimen-slipped' as const, specimenId: null }
    addDecision(database, { ...signed, breakId, kind: 'set-aside', ...because })
    expect(breakingSession(database, breakingSessionId, specimen).members[0]).toMatchObject({
      ...{ state: 'broken', spares: 2, specimen: { breakInForce: null } },
    })
    storeBreak(database, spare!)
    expect(breakingSession(database, breakingSessionId, specimen).members[0]!.spares).toBe(1)
  })

  it('refuses to skip what is none of the session', () => {
    const { pull, young } = pulled()
    const { breakingSessionId } = begin({ pulls: [pull] })
    expect(() => event(breakingSessionId, 'skipped', young)).toThrow(/none of this breaking session/)
  })

  it('holds in the check of the archive', () => {
    const { pull, inOrder } = pulled()
    const { breakingSessionId } = begin({ pulls: [pull] })
    event(breakingSessionId, 'skipped', inOrder[0], 'later')
    event(breakingSessionId, 'ended')
    expect(verify(database, () => {}).faults).toEqual([])
  })
})
