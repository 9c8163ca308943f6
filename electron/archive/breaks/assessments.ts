import { type Assessment, assessment } from '#contract/breaks/assessment.ts'
import { plain } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { recordKind, storeRecord } from '../core/recordKind.ts'
import { numbered } from '../core/recordTable.ts'
import { inTransaction } from '../core/transaction.ts'
import { refreshBreak } from '../lists/refresh.ts'
import { readHeader } from './breakHeaders.ts'

/** What the broken faces look like. */
export const assessmentKind = recordKind({
  name: 'assessment',
  noun: 'assessment',
  table: 'assessment',
  identity: numbered('assessmentId'),
  instant: 'recordedAt',
  schema: assessment,
  columns: {
    breakId: plain,
    recordedAt: plain,
    by: plain,
    woodFailurePercent: plain,
    failurePattern: plain,
    note: plain,
  },
})

/** Lays an assessment of the broken faces over the older ones. */
export function addAssessment(database: Database, made: Omit<Assessment, 'assessmentId'>): Assessment {
  return inTransaction(database, () => {
    readHeader(database, made.breakId)
    const stored = storeRecord(database, assessmentKind, made)
    refreshBreak(database, made.breakId)
    return stored
  })
}
