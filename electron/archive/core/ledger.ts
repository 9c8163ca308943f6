import { createHash } from 'node:crypto'
import { canonicalJson } from '#domain/text/canonicalJson.ts'
import type { Database } from './database.ts'
import { prepared } from './prepared.ts'

export type LedgerRow = {
  seq: number
  recorded_at: string
  kind: string
  record_id: number
  content: string
  previous_hash: string
  hash: string
}

/** What stands before the first entry. */
export const firstPreviousHash = '0'.repeat(64)

/** SHA-256 over the entry's six values, each followed by a line feed. Content is JSON on one line. */
export function ledgerHash(entry: Omit<LedgerRow, 'hash'>): string {
  const { previous_hash, seq, recorded_at, kind, record_id, content } = entry
  return createHash('sha256')
    .update(`${previous_hash}\n${seq}\n${recorded_at}\n${kind}\n${record_id}\n${content}\n`)
    .digest('hex')
}

/** Adds a record to the chain. Call it inside the transaction that stores the record. */
export function appendLedger(
  database: Database,
  kind: string,
  recordId: number,
  recordedAt: string,
  record: unknown,
): void {
  const last = prepared<Pick<LedgerRow, 'seq' | 'hash'>>(
    database,
    'SELECT seq, hash FROM ledger ORDER BY seq DESC LIMIT 1',
  ).get()
  const entry = {
    seq: (last?.seq ?? 0) + 1,
    recorded_at: recordedAt,
    kind,
    record_id: recordId,
    content: canonicalJson(record),
    previous_hash: last?.hash ?? firstPreviousHash,
  }
  prepared(
    database,
    `INSERT INTO ledger (seq, recorded_at, kind, record_id, content, previous_hash, hash)
     VALUES (@seq, @recorded_at, @kind, @record_id, @content, @previous_hash, @hash)`,
  ).run({ ...entry, hash: ledgerHash(entry) })
}
