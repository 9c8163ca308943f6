import type Database from 'better-sqlite3'
import { appendLedger, type LedgerKind } from './ledger.ts'
import { prepared } from './prepared.ts'

/** A row to be stored, and the entry that the ledger makes of it. */
export type LedgeredRow<Content> = {
  kind: LedgerKind
  recordedAt: string
  /** An INSERT with named places, filled from `values`. */
  sql: string
  values: object
  /** What the ledger holds of the row, read back by its number. */
  content(database: Database.Database, id: number): Content
}

/**
 * Stores a row and enters it in the chain, both or neither; returns what the ledger holds of it. `before` looks whether the
 * row may be, and throws when it may not; `after` brings up to date what follows from it.
 */
export function addLedgeredRow<Content>(
  database: Database.Database,
  row: LedgeredRow<Content>,
  { before = () => {}, after = () => {} }: { before?(): void; after?(id: number): void } = {},
): { id: number; content: Content } {
  return database
    .transaction(() => {
      before()
      const id = Number(prepared(database, row.sql).run(row.values).lastInsertRowid)
      const content = row.content(database, id)
      appendLedger(database, row.kind, id, row.recordedAt, content)
      after(id)
      return { id, content }
    })
    .immediate()
}
