// Held by tests/archive/lists/rebuild.spec.ts.
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'

/**
 * Raised whenever the same records would give other current rows than before (deriveBreaks.ts, deriveSpecimens.ts,
 * catalogue/deriveCatalogue.ts, and the words whose names end with ToFind): an archive whose rows another derivation made is then
 * brought up to date when it is opened for writing.
 */
export const derivationVersion = 8

/** Whether the current rows were made by this program's derivation; those of another one are none the worse for being different. */
export function isDerivedHere(database: Database): boolean {
  const row = prepared<{ version: number }>(database, 'SELECT version FROM derivation').get()
  return row?.version === derivationVersion
}

/** Notes that the current rows were made by this program's derivation. */
export function noteDerivation(database: Database): void {
  prepared(database, 'INSERT OR REPLACE INTO derivation (derivation_id, version) VALUES (1, ?)').run(derivationVersion)
}
