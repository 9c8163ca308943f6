import type { Database } from '../core/database.ts'
import { inTransaction } from '../core/transaction.ts'
import { refreshBreak } from '../lists/refresh.ts'
import { readHeader } from './breakHeaders.ts'
import { sealBreak } from './breaks.ts'

/**
 * Seals every break that a crash left running, from the samples that had reached the disk, and returns their ids. Only the
 * holder of the program lock may call it: it takes a break without an end as a sign that its program is gone.
 */
export function recoverBreaks(database: Database): number[] {
  return inTransaction(database, () => {
    const unfinished = database
      .prepare<[], { break_id: number }>(
        'SELECT break_id FROM break_header WHERE break_id NOT IN (SELECT break_id FROM break_end) ORDER BY break_id',
      )
      .all()
    return unfinished.map(({ break_id: breakId }) => {
      const startedMs = Date.parse(readHeader(database, breakId).startedAt)
      // Nothing is known of the moment of the crash; the last stored sample is the latest that is certain.
      sealBreak(database, breakId, 'recovered', 0, (lastUs) => new Date(startedMs + lastUs / 1000).toISOString())
      refreshBreak(database, breakId)
      return breakId
    })
  })
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
