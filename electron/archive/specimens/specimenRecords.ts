// Held by tests/archive/specimens/specimens.spec.ts.
import type { ListQuery } from '#contract/listQuery.ts'
import { type SpecimenRecord, type SpecimenSummary, specimenSummary } from '#contract/specimens/specimenRecord.ts'
import type { Row } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { specimensThatFit, specimensThatWait } from '../lists/lists.ts'
import { type ReadableRows, readableRows } from '../lists/readableRows.ts'
import { breakSummariesOf, readBreakSummary } from '../lists/summaries.ts'
import { specimenKind, specimenRevisions } from './specimens.ts'

/** One specimen as lists show it. */
function readSpecimenSummary(database: Database, specimenId: number): SpecimenSummary {
  const row = prepared<Row & { break_in_force: number | null }>(
    database,
    `SELECT r.*, s.break_in_force FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     WHERE s.specimen_id = ?`,
  ).get(specimenId)
  if (row === undefined) throw notFound('specimen', specimenId)
  const { break_in_force: inForce } = row
  return {
    ...specimenKind.asStored(row),
    breakInForce: inForce === null ? null : readBreakSummary(database, inForce).summary,
  }
}

/** A specimen with its whole history. */
export function specimen(database: Database, specimenId: number): SpecimenRecord {
  return {
    current: readSpecimenSummary(database, specimenId),
    revisions: specimenRevisions(database, specimenId),
    breaks: breakSummariesOf(database, specimenId),
  }
}

type SpecimenPage = { total: number } & ReadableRows<SpecimenSummary>

function summariesOf(database: Database, ids: readonly number[]): ReadableRows<SpecimenSummary> {
  return readableRows('specimen', ids, (specimenId) => readSpecimenSummary(database, specimenId), specimenSummary)
}

/** One page of the specimens that fit, and how many fit in all. */
export function listSpecimens(database: Database, query: ListQuery): SpecimenPage {
  const { total, ids } = specimensThatFit(database, query)
  return { total, ...summariesOf(database, ids) }
}

/**
 * The first specimens, in order of number (natural order), that have no break in force; `after` skips up to and including
 * that one. `total` counts all that wait.
 */
export function waitingSpecimens(database: Database, after: number | null, limit: number): SpecimenPage {
  const { total, ids } = specimensThatWait(database, after, limit)
  return { total, ...summariesOf(database, ids) }
}
