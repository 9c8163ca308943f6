import type { ChainHead, HeadFinding } from '#contract/keeping/archive.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'

/** The newest entry of the chain; null: it has none yet. */
export function chainHead(database: Database): ChainHead | null {
  const row = prepared<ChainHead>(
    database,
    'SELECT seq AS count, hash, recorded_at AS instant FROM ledger ORDER BY seq DESC LIMIT 1',
  ).get()
  return row ?? null
}

/** The hash of the first entry, which tells one archive from another and stays what it is; null: there is no entry yet. */
export function chainIdentity(database: Database): string | null {
  return hashAt(database, 1)
}

/** Whether the chain still holds an entry that was its head before; null: it does. */
export function heldAgainst(database: Database, kept: Pick<ChainHead, 'count' | 'hash'>): HeadFinding | null {
  const hash = hashAt(database, kept.count)
  if (hash === null) return 'shorter'
  return hash === kept.hash ? null : 'different'
}

/** Brings what lies in the journal into the file itself, as far as nobody reads: a copy of the file alone is then whole. */
export function settle(database: Database): void {
  database.pragma('wal_checkpoint(TRUNCATE)')
}

function hashAt(database: Database, seq: number): string | null {
  return prepared<{ hash: string }>(database, 'SELECT hash FROM ledger WHERE seq = ?').get(seq)?.hash ?? null
}
