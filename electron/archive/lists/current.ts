import type Database from 'better-sqlite3'
import { overruledPeakN } from '../breaks/overruledPeak.ts'
import { folded, naturalKey } from '../core/naturalOrder.ts'
import { prepared } from '../core/prepared.ts'
import { touch } from '../core/touched.ts'
import { standingText } from './inForce.ts'

/**
 * What stands in force now, one row for each break and each specimen, so that a list needs no search through the history.
 * Derived: everything in it follows from the records, and `verify` compares it with them.
 */
export type BreakCurrentRow = {
  break_id: number
  started_at: string
  specimen_id: number | null
  evaluation_id: number | null
  assessment_id: number | null
  set_aside: string | null
  outcome: string | null
  peak_n: number | null
  wood_failure_percent: number | null
  note_search: string
  set_aside_cause: string | null
  /** The decision whose sample stands for the peak; null: the peak is as found. */
  peak_decision_id: number | null
}

export type SpecimenCurrentRow = {
  specimen_id: number
  revision_id: number
  number_folded: string
  number_key: string
  adhesive_key: string
  joint_type_key: string
  exposure_key: string
  area_mm2: number | null
  search: string
  demo: number
  break_in_force: number | null
  any_set_aside: number
  started_at: string | null
  peak_n: number | null
  wood_failure_percent: number | null
}

type DerivedRow = Omit<BreakCurrentRow, 'note_search' | 'peak_decision_id'> & {
  note: string | null
  peak_word_id: number | null
}

/** What the records say of a break now. */
export function deriveBreak(database: Database.Database, breakId: number): BreakCurrentRow {
  const row = prepared<DerivedRow>(
    database,
    `WITH moved AS (SELECT specimen_id FROM decision WHERE break_id = @breakId AND kind = 'reassigned'
       ORDER BY decision_id DESC LIMIT 1)
     SELECT h.break_id, h.started_at,
       CASE WHEN EXISTS (SELECT 1 FROM moved) THEN (SELECT specimen_id FROM moved) ELSE h.specimen_id END AS specimen_id,
       e.evaluation_id, a.assessment_id, e.outcome, e.peak_n, a.wood_failure_percent, a.note,
       CASE w.kind WHEN 'set-aside' THEN w.reason END AS set_aside,
       CASE w.kind WHEN 'set-aside' THEN w.cause END AS set_aside_cause,
       (SELECT max(decision_id) FROM decision
         WHERE break_id = @breakId AND kind IN ('peak-picked', 'premature-failure', 'peak-as-found')) AS peak_word_id
     FROM break_header h
     LEFT JOIN evaluation e ON e.evaluation_id = (${standingText('@breakId')} LIMIT 1)
     LEFT JOIN assessment a ON a.assessment_id = (SELECT max(assessment_id) FROM assessment WHERE break_id = @breakId)
     LEFT JOIN decision w ON w.decision_id = (SELECT max(decision_id) FROM decision
       WHERE break_id = @breakId AND kind IN ('set-aside', 'taken-back'))
     WHERE h.break_id = @breakId`,
  ).get({ breakId })
  if (row === undefined) throw new RangeError(`deriveBreak requires a stored break, and ${breakId} is none`)
  const { note, peak_word_id, ...found } = row
  const rest = { ...found, note_search: folded(note ?? '') }
  const overruled = peak_word_id === null ? null : overruledPeakN(database, peak_word_id, row.evaluation_id)
  return overruled === null
    ? { ...rest, peak_decision_id: null }
    : { ...rest, peak_decision_id: peak_word_id, outcome: 'break', peak_n: overruled.peakN }
}

/** What the records say of a specimen now; its breaks must be up to date. */
export function deriveSpecimen(database: Database.Database, specimenId: number): SpecimenCurrentRow {
  const revision = prepared<{
    revision_id: number
    number: string
    adhesive: string
    joint_type: string
    exposure: string
    place: string
    notes: string
    area_mm2: number | null
    demo: number
  }>(database, 'SELECT * FROM specimen_revision WHERE specimen_id = ? ORDER BY revision DESC LIMIT 1').get(specimenId)
  if (revision === undefined)
    throw new RangeError(`deriveSpecimen requires a stored specimen, and ${specimenId} is none`)
  const inForce = prepared<BreakCurrentRow>(
    database,
    `SELECT * FROM break_current WHERE specimen_id = ? AND outcome = 'break' AND set_aside IS NULL
     ORDER BY break_id DESC LIMIT 1`,
  ).get(specimenId)
  const anySetAside = prepared(
    database,
    'SELECT 1 FROM break_current WHERE specimen_id = ? AND set_aside IS NOT NULL LIMIT 1',
  ).get(specimenId)
  const { number, adhesive, joint_type, exposure, place, notes } = revision
  return {
    specimen_id: specimenId,
    revision_id: revision.revision_id,
    number_folded: folded(number),
    number_key: naturalKey(number),
    adhesive_key: naturalKey(adhesive),
    joint_type_key: naturalKey(joint_type),
    exposure_key: naturalKey(exposure),
    area_mm2: revision.area_mm2,
    search: folded([number, adhesive, joint_type, exposure, place, notes].join('\n')),
    demo: revision.demo,
    break_in_force: inForce?.break_id ?? null,
    any_set_aside: anySetAside === undefined ? 0 : 1,
    started_at: inForce?.started_at ?? null,
    peak_n: inForce?.peak_n ?? null,
    wood_failure_percent: inForce?.wood_failure_percent ?? null,
  }
}

/** Brings the current row of a specimen up to date. Call it inside the transaction that changed a record. */
export function refreshSpecimen(database: Database.Database, specimenId: number): void {
  // Not INSERT OR REPLACE: that would silently push out another specimen that holds the same number.
  prepared(database, 'DELETE FROM specimen_current WHERE specimen_id = ?').run(specimenId)
  prepared(
    database,
    `INSERT INTO specimen_current (specimen_id, revision_id, number_folded, number_key, adhesive_key,
       joint_type_key, exposure_key, area_mm2, search, demo, break_in_force, any_set_aside, started_at, peak_n,
       wood_failure_percent)
     VALUES (@specimen_id, @revision_id, @number_folded, @number_key, @adhesive_key,
       @joint_type_key, @exposure_key, @area_mm2, @search, @demo, @break_in_force, @any_set_aside, @started_at, @peak_n,
       @wood_failure_percent)`,
  ).run(deriveSpecimen(database, specimenId))
  touch(database, `specimen ${specimenId}`)
}

/** What a break counts as: all of its row but what was seen on its faces and noted of it. */
const resultColumns = [
  'specimen_id',
  'evaluation_id',
  'outcome',
  'peak_n',
  'peak_decision_id',
  'set_aside',
  'set_aside_cause',
] as const

/** Brings the current row of a break, and of every specimen it touches, up to date. */
export function refreshBreak(database: Database.Database, breakId: number): void {
  const before = prepared<BreakCurrentRow>(database, 'SELECT * FROM break_current WHERE break_id = ?').get(breakId)
  const now = deriveBreak(database, breakId)
  prepared(
    database,
    `INSERT OR REPLACE INTO break_current (break_id, started_at, specimen_id, evaluation_id, assessment_id, set_aside,
       outcome, peak_n, wood_failure_percent, note_search, set_aside_cause, peak_decision_id)
     VALUES (@break_id, @started_at, @specimen_id, @evaluation_id, @assessment_id, @set_aside,
       @outcome, @peak_n, @wood_failure_percent, @note_search, @set_aside_cause, @peak_decision_id)`,
  ).run(now)
  touch(database, `break ${breakId}`)
  // A capture that has only begun has no result yet.
  const hasResult = before !== undefined || now.evaluation_id !== null
  if (hasResult && resultColumns.some((column) => before?.[column] !== now[column]))
    touch(database, `result ${breakId}`)
  if ((before?.evaluation_id ?? null) !== now.evaluation_id) touch(database, `curve ${breakId}`)
  for (const specimenId of new Set([before?.specimen_id ?? null, now.specimen_id]))
    if (specimenId !== null) refreshSpecimen(database, specimenId)
}
