import type { Progress } from '#contract/tasks.ts'
import { remakeCatalogue } from '../catalogue/catalogueRows.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { stopped } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { inTransaction } from '../core/transaction.ts'
import { noteDerivation } from './derivation.ts'
import { deriveBreaks } from './deriveBreaks.ts'
import { deriveSpecimens } from './deriveSpecimens.ts'
import { putBreaks, putSpecimens } from './refresh.ts'

const atOnce = 500

/**
 * Makes every derived row again from the records: all or nothing, so that no list is ever half of one derivation and half of
 * another. No sample of a running capture can be stored meanwhile. Throws the trouble "cancelled" when it is stopped.
 */
export function rebuildDerived(
  database: Database,
  onProgress: (progress: Progress) => void,
  isCancelled: () => boolean,
): void {
  inTransaction(database, () => {
    const breakIds = idsOf(database, 'SELECT break_id AS id FROM break_header ORDER BY break_id')
    const specimenIds = idsOf(database, 'SELECT DISTINCT specimen_id AS id FROM specimen_revision ORDER BY specimen_id')
    const total = breakIds.length + specimenIds.length
    let done = 0
    const tell = (more: number) => {
      done += more
      onProgress({ task: 'rebuild', done, total })
      if (isCancelled()) throw cancelled()
    }
    tell(0)
    database.exec('DELETE FROM specimen_current; DELETE FROM break_current')
    remakeCatalogue(database)
    for (const ids of batchesOf(breakIds)) {
      putBreaks(database, deriveBreaks(database, ids))
      tell(ids.length)
    }
    for (const ids of batchesOf(specimenIds)) {
      putSpecimens(database, deriveSpecimens(database, ids))
      tell(ids.length)
    }
    noteDerivation(database)
    touch(database, 'breaks', 'results', 'specimens', 'curves', 'catalogue')
  })
}

function idsOf(database: Database, text: string): number[] {
  return prepared<{ id: number }>(database, text)
    .all()
    .map(({ id }) => id)
}

/** Some of a long list at a time. */
export function* batchesOf<One>(all: readonly One[]): Generator<One[]> {
  for (let start = 0; start < all.length; start += atOnce) yield all.slice(start, start + atOnce)
}

const cancelled = () => stopped('Rebuilding the lists was stopped; they are as they were.')
