// Held by tests/archive/programme/catalogue.spec.ts.
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { touch } from '../core/touched.ts'
import { deriveSpecimens } from './deriveSpecimens.ts'
import { batchesOf } from './rebuild.ts'
import { putSpecimens } from './refresh.ts'

const named = ['adhesive', 'lot', 'wood', 'board', 'joint_type', 'exposure', 'place']

/** Numbers of the specimens that name one of some entries, in SQL with the place @entries for these as JSON. */
export const specimensNaming = `SELECT specimen_id AS id FROM specimen_current
  WHERE ${named.map((name) => `${name}_id IN (SELECT value FROM json_each(@entries))`).join(' OR ')}`

/** Brings the current rows of all specimens that named one of some entries up to date, after the catalogue changed. */
export function refreshNamed(database: Database, entryIds: readonly number[]): void {
  const ids = prepared<{ id: number }>(database, specimensNaming)
    .all({ entries: JSON.stringify(entryIds) })
    .map(({ id }) => id)
  for (const some of batchesOf(ids)) putSpecimens(database, deriveSpecimens(database, some))
  if (ids.length > 0) touch(database, 'specimens', 'breaks', 'results')
}
