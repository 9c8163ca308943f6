// Held by tests/archive/verify/verify.spec.ts.
import { canonicalJson } from '#domain/text/canonicalJson.ts'
import type { Database } from '../core/database.ts'
import { unfitBecause } from '../core/databaseTrouble.ts'
import type { Report } from '../core/fault.ts'
import { firstPreviousHash, type LedgerRow, ledgerHash } from '../core/ledger.ts'
import { prepared } from '../core/prepared.ts'
import type { LedgeredKind } from '../core/recordKind.ts'

/** Walks the chain and compares each entry with its record and each record with its entry; returns how many entries there are. */
export function verifyLedger(database: Database, report: Report, kinds: readonly LedgeredKind[]): number {
  const byName = new Map(kinds.map((kind) => [kind.name, kind]))
  let entries = 0
  let previousSeq = 0
  let previousHash = firstPreviousHash
  for (const entry of database.prepare<[], LedgerRow>('SELECT * FROM ledger ORDER BY seq').iterate()) {
    const where = `ledger entry ${entry.seq} (${entry.kind} ${entry.record_id})`
    if (entry.seq !== previousSeq + 1)
      report({ where, what: `the entries between ${previousSeq} and ${entry.seq} are gone` })
    if (entry.previous_hash !== previousHash)
      report({ where, what: 'its previous hash is not the hash of the entry before it' })
    if (ledgerHash(entry) !== entry.hash) report({ where, what: 'its content does not match its hash' })
    const difference = differenceFromRecord(database, entry, byName.get(entry.kind))
    if (difference !== null) report({ where, what: difference })
    entries += 1
    previousSeq = entry.seq
    previousHash = entry.hash
  }
  for (const { name, ids } of kinds) {
    const missing = prepared<{ id: number }>(
      database,
      `SELECT id FROM (${ids}) WHERE id NOT IN (SELECT record_id FROM ledger WHERE kind = ?) ORDER BY id`,
    ).all(name)
    for (const { id } of missing) report({ where: `${name} ${id}`, what: 'the record has no entry in the ledger' })
  }
  return entries
}

function differenceFromRecord(database: Database, entry: LedgerRow, kind: LedgeredKind | undefined): string | null {
  // Any word may stand there: the table of an older or damaged archive does not know which kinds there are.
  if (kind === undefined) return `no record is called "${entry.kind}"`
  let record: unknown
  try {
    record = kind.content(database, entry.record_id)
    kind.check(record)
  } catch (thrown) {
    return `its record cannot be read: ${unfitBecause(thrown)}`
  }
  return canonicalJson(record) === entry.content ? null : 'the record differs from what the ledger holds of it'
}
