import type Database from 'better-sqlite3'
import type { SpecimenRecord, SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { type BreakSummaryRow, breakSummaryFromRow, breakSummaryText, specimenSummary } from '../lists/summaries.ts'
import { type SpecimenRow, specimenRevisions } from './specimens.ts'

/** The statement that finds the breaks of a specimen; its plan is looked at by a test. */
export const breaksOfSpecimenText = `${breakSummaryText} WHERE b.specimen_id = ? ORDER BY b.break_id`

/** One specimen as lists show it. */
export function readSpecimenSummary(database: Database.Database, specimenId: number): SpecimenSummary {
  const row = prepared<SpecimenRow & { break_in_force: number | null }>(
    database,
    `SELECT r.*, s.break_in_force FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     WHERE s.specimen_id = ?`,
  ).get(specimenId)
  if (row === undefined) throw notFound('specimen', specimenId)
  const inForce =
    row.break_in_force === null
      ? undefined
      : prepared<BreakSummaryRow>(database, `${breakSummaryText} WHERE b.break_id = ?`).get(row.break_in_force)
  return specimenSummary(database, row, inForce)
}

/** A specimen with its whole history. */
export function specimen(database: Database.Database, specimenId: number): SpecimenRecord {
  return {
    current: readSpecimenSummary(database, specimenId),
    revisions: specimenRevisions(database, specimenId),
    breaks: prepared<BreakSummaryRow>(database, breaksOfSpecimenText)
      .all(specimenId)
      .map((row) => breakSummaryFromRow(database, row)),
  }
}
