import type { MemberState } from '#contract/programme/breakingProcedures.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { timesBroken } from './countsOfSpecimen.ts'
import { isWithdrawn } from './withdrawn.ts'

/** When the session `b` of breaking_session was ended, in SQL; NULL: it is open. */
export const sessionEndedAt = (b: string) =>
  `(SELECT CASE kind WHEN 'ended' THEN recorded_at END FROM breaking_session_event
    WHERE breaking_session_id = ${b}.breaking_session_id AND kind IN ('ended', 'reopened')
    ORDER BY breaking_session_event_id DESC LIMIT 1)`

/** The breaking session that is open; null: none. */
export function openSession(database: Database): { breakingSessionId: number; title: string } | null {
  const found = prepared<{ breakingSessionId: number; title: string }>(
    database,
    `SELECT breaking_session_id AS breakingSessionId, title FROM breaking_session b
     WHERE ${sessionEndedAt('b')} IS NULL ORDER BY breaking_session_id DESC LIMIT 1`,
  ).get()
  return found ?? null
}

export type SessionMember = { specimenId: number; state: MemberState }

/** The specimens of a session in the order in which they are to be broken, each with what became of it. */
export function sessionMembers(database: Database, breakingSessionId: number): SessionMember[] {
  return prepared<SessionMember>(
    database,
    `SELECT m.value AS specimenId, CASE
       WHEN ${timesBroken('m.value')} > 0 THEN 'broken'
       WHEN ${isWithdrawn('m.value')} THEN 'withdrawn'
       WHEN EXISTS (SELECT 1 FROM breaking_session_event e WHERE e.breaking_session_id = b.breaking_session_id
         AND e.kind = 'skipped' AND e.specimen_id = m.value) THEN 'skipped'
       ELSE 'waiting' END AS state
     FROM breaking_session b, json_each(b.specimen_ids) m
     WHERE b.breaking_session_id = ? ORDER BY m.key`,
  ).all(breakingSessionId)
}
