// Held by tests/archive/catalogue/newNames.spec.ts.
import type { CatalogueEntry } from '#contract/programme/catalogue.ts'
import { folded, naturalKey } from '#domain/text/naturalOrder.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { type CatalogueCurrentRow, type CatalogueNameRow, deriveCatalogue } from './deriveCatalogue.ts'

function putCurrent(database: Database, row: CatalogueCurrentRow): void {
  prepared(
    database,
    `INSERT INTO catalogue_current (entry_id, revision_id, kind, name, name_key, search, into_entry_id)
     VALUES (@entry_id, @revision_id, @kind, @name, @name_key, @search, @into_entry_id)`,
  ).run(row)
}

function putName(database: Database, row: CatalogueNameRow): void {
  prepared(
    database,
    'INSERT INTO catalogue_name (kind, scope, name_key, entry_id) VALUES (@kind, @scope, @name_key, @entry_id)',
  ).run(row)
}

/** Makes the rows of the catalogue again from its records. */
export function remakeCatalogue(database: Database): void {
  const { current, names } = deriveCatalogue(database)
  database.exec('DELETE FROM catalogue_name; DELETE FROM catalogue_current')
  for (const row of current) putCurrent(database, row)
  for (const row of names) putName(database, row)
}

/** Adds the rows of an entry that was not there before. */
export function putNewEntry(database: Database, revisionId: number, entry: CatalogueEntry, scope: number): void {
  const { entryId, fields } = entry
  const { kind, name } = fields
  const key = naturalKey(name)
  putCurrent(database, {
    ...{ entry_id: entryId, revision_id: revisionId, kind, name, name_key: key },
    ...{ search: folded(name), into_entry_id: entryId },
  })
  putName(database, { kind, scope, name_key: key, entry_id: entryId })
}
