import { leftOut } from '#contract/keeping/unreadable.ts'
import type {
  BreakingMember,
  BreakingRecord,
  BreakingRow,
  MemberState,
} from '#contract/programme/breakingProcedures.ts'
import type { BreakingSession, BreakingSessionEvent } from '#contract/programme/breakingSession.ts'
import type { SpecimenRecord } from '#contract/specimens/specimenRecord.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { storeRecord } from '../core/recordKind.ts'
import { readRecord, readRecords } from '../core/recordTable.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'
import { inTransaction } from '../core/transaction.ts'
import { openSession, sessionEndedAt, sessionMembers } from '../lists/breakingQueue.ts'
import { timesBroken } from '../lists/countsOfSpecimen.ts'
import { isWithdrawn } from '../lists/withdrawn.ts'
import { eventsOf, placeInStudy } from './breakingPlaces.ts'
import { orderToBreak } from './orderToBreak.ts'
import { breakingSessionEventKind, breakingSessionKind } from './sessionKinds.ts'

/** Every session with how far it is, newest first. */
export function breakingSessions(database: Database): BreakingRow[] {
  return readRecords(database, breakingSessionKind, 'ORDER BY breaking_session_id DESC').map((session) =>
    rowOf(database, session),
  )
}

function rowOf(database: Database, session: BreakingSession): BreakingRow {
  const { endedAt } = prepared<{ endedAt: string | null }>(
    database,
    `SELECT ${sessionEndedAt('b')} AS endedAt FROM breaking_session b WHERE breaking_session_id = ?`,
  ).get(session.breakingSessionId)!
  const members = sessionMembers(database, session.breakingSessionId)
  const count = (state: MemberState) => members.filter((one) => one.state === state).length
  return { ...session, endedAt, broken: count('broken'), skipped: count('skipped'), withdrawn: count('withdrawn') }
}

/** One session with how far it is. Throws the trouble "not-found" when there is none. */
export function breakingRow(database: Database, breakingSessionId: number): BreakingRow {
  return rowOf(database, readRecord(database, breakingSessionKind, breakingSessionId))
}

export type NewBreakingSession = Omit<BreakingSession, 'breakingSessionId'> & {
  /** What the order of specimens begins from for which none was drawn before. */
  seed: number
}

/**
 * Begins a session of what waits of some pulls, in the kept random order, and of the specimens named besides. Throws the trouble
 * "not-found" for a specimen that is not there, and "conflict" while another session is open, where nothing is left to break, and
 * for a named specimen that broke or was withdrawn.
 */
export function beginBreakingSession(database: Database, { seed, ...asked }: NewBreakingSession): BreakingRow {
  return inTransaction(database, () => {
    const open = openSession(database)
    if (open !== null)
      throw conflict(`The breaking session “${open.title}” is still open.`, 'Go on with it, or end it first.')
    refuseUnfit(database, asked.specimenIds)
    const specimenIds = orderToBreak(database, asked, seed)
    if (specimenIds.length === 0)
      throw conflict('Nothing of that waits to be broken.', 'Choose another pull, or glue its blocks first.')
    return rowOf(database, storeRecord(database, breakingSessionKind, { ...asked, specimenIds }))
  })
}

function refuseUnfit(database: Database, specimenIds: readonly number[]): void {
  const missing = prepared<{ id: number }>(
    database,
    'SELECT value AS id FROM json_each(?) WHERE value NOT IN (SELECT specimen_id FROM specimen_current)',
  ).get(JSON.stringify(specimenIds))
  if (missing !== undefined) throw notFound('specimen', missing.id)
  const unfit = prepared<{ number: string; broken: number }>(
    database,
    `SELECT r.number, ${timesBroken('s.specimen_id')} > 0 AS broken
     FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     WHERE s.specimen_id IN (SELECT value FROM json_each(?))
       AND (${timesBroken('s.specimen_id')} > 0 OR ${isWithdrawn('s.specimen_id')}) ORDER BY s.number_key`,
  ).all(JSON.stringify(specimenIds))
  const [first] = unfit
  if (first === undefined) return
  const more = unfit.length === 1 ? '' : `, and ${unfit.length - 1} more cannot be broken either`
  throw conflict(
    `The specimen ${first.number} ${first.broken ? 'broke already' : 'was withdrawn'}${more}.`,
    'Leave them out of the session. One that is to be broken again is put on the bench from its own page.',
  )
}

/** Notes that a specimen was passed over, or that a session was ended or opened again. */
export function addBreakingEvent(
  database: Database,
  event: Omit<BreakingSessionEvent, 'breakingSessionEventId'>,
): BreakingRow {
  return inTransaction(database, () => {
    const row = breakingRow(database, event.breakingSessionId)
    refuseUnfitEvent(database, row, event)
    storeRecord(database, breakingSessionEventKind, event)
    return breakingRow(database, event.breakingSessionId)
  })
}

function refuseUnfitEvent(
  database: Database,
  row: BreakingRow,
  { kind, specimenId }: Pick<BreakingSessionEvent, 'kind' | 'specimenId'>,
): void {
  const open = openSession(database)
  if (kind === 'reopened' && open !== null)
    throw conflict(`The breaking session “${open.title}” is open already.`, 'End it first.')
  if (kind !== 'reopened' && row.endedAt !== null)
    throw conflict(`The breaking session “${row.title}” is ended.`, 'Open it again first.')
  if (kind === 'skipped' && !row.specimenIds.includes(specimenId ?? 0))
    throw conflict('That specimen is none of this breaking session.', 'Go on to the next one instead.')
}

/** A session with what became of each of its specimens. `specimenOf` reads one of them. */
export function breakingSession(
  database: Database,
  breakingSessionId: number,
  specimenOf: (database: Database, specimenId: number) => SpecimenRecord,
): BreakingRecord {
  const row = breakingRow(database, breakingSessionId)
  const skips = new Map(
    readRecords(
      database,
      breakingSessionEventKind,
      "WHERE breaking_session_id = ? AND kind = 'skipped' ORDER BY breaking_session_event_id",
      breakingSessionId,
    ).map(({ specimenId, recordedAt, by, note }) => [specimenId, { recordedAt, by, note }]),
  )
  const records = sessionMembers(database, breakingSessionId).map(({ specimenId, state }) => {
    const record = specimenOf(database, specimenId)
    const member: BreakingMember = {
      specimen: record.current,
      ...placeInStudy(database, specimenId),
      state,
      skipped: state === 'skipped' ? (skips.get(specimenId) ?? null) : null,
      breaks: record.breaks
        .filter(({ startedAt }) => startedAt >= row.startedAt)
        .map((summary) => ({ summary, events: eventsOf(database, summary.breakId) })),
    }
    return { member, unreadable: record.unreadable }
  })
  return { ...row, members: records.map(({ member }) => member), ...leftOut(...records) }
}
