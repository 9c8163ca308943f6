import { Trouble } from '#contract/errors.ts'
import type { Database } from '../core/database.ts'
import { isUnfitRecord } from '../core/databaseTrouble.ts'
import { inTransaction } from '../core/transaction.ts'
import { refreshBreak } from '../lists/refresh.ts'
import { readHeader } from './breakHeaders.ts'
import { sealBreak } from './breaks.ts'

/**
 * Seals every break that a crash left running, from the samples that had reached the disk, and returns their ids;
 * one whose samples are damaged stays as it is, and `verify` names it. Only the
 * holder of the program lock may call it: it takes a break without an end as a sign that its program is gone.
 */
export function recoverBreaks(database: Database): number[] {
  return inTransaction(database, () => {
    const unfinished = database
      .prepare<[], { break_id: number }>(
        'SELECT break_id FROM break_header WHERE break_id NOT IN (SELECT break_id FROM break_end) ORDER BY break_id',
      )
      .all()
    return unfinished.map((row) => row.break_id).filter((breakId) => isSealed(database, breakId))
  })
}

/** Seals what reached the disk; false: it is damaged, and stays as it is, for the other records may not wait for it. */
function isSealed(database: Database, breakId: number): boolean {
  try {
    inTransaction(database, () => seal(database, breakId))
    return true
  } catch (thrown) {
    if (isUnfitRecord(thrown) || (thrown instanceof Trouble && thrown.code === 'archive-damaged')) return false
    throw thrown
  }
}

function seal(database: Database, breakId: number): void {
  const startedMs = Date.parse(readHeader(database, breakId).startedAt)
  // Nothing is known of the moment of the crash; the last stored sample is the latest that is certain.
  sealBreak(database, breakId, 'recovered', 0, (lastUs) => new Date(startedMs + lastUs / 1000).toISOString())
  refreshBreak(database, breakId)
}

/** Breaks whose capture a crash cut short and which have no evaluation yet. */
export function recoveredWithoutEvaluation(database: Database): number[] {
  return database
    .prepare<[], { break_id: number }>(
      `SELECT break_id FROM break_end
       WHERE ending = 'recovered' AND break_id NOT IN (SELECT break_id FROM evaluation) ORDER BY break_id`,
    )
    .all()
    .map((row) => row.break_id)
}
