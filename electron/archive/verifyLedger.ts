import type Database from 'better-sqlite3'
import { type AssessmentRow, assessmentFromRow } from './assessments.ts'
import { readEnd, readHeader } from './breaks.ts'
import { canonicalJson } from './canonicalJson.ts'
import { type DecisionRow, decisionFromRow } from './decisions.ts'
import { type EvaluationRow, evaluationFromRow } from './evaluations.ts'
import { firstPreviousHash, type LedgerKind, type LedgerRow, ledgerHash } from './ledger.ts'
import { prepared } from './prepared.ts'
import { readSession } from './sessions.ts'
import { type SpecimenRow, specimenFromRow } from './specimens.ts'
import type { Report } from './verify.ts'

type RecordKind = {
  /** All ids that must stand in the ledger. */
  ids: string
  read(database: Database.Database, id: number): unknown
}

function rowReader<Row, Value>(text: string, convert: (row: Row) => Value): RecordKind['read'] {
  return (database, id) => {
    const row = prepared<Row>(database, text).get(id)
    return row === undefined ? undefined : convert(row)
  }
}

const recordKinds: Readonly<Record<LedgerKind, RecordKind>> = {
  specimen: {
    ids: 'SELECT revision_id AS id FROM specimen_revision',
    read: rowReader<SpecimenRow, unknown>('SELECT * FROM specimen_revision WHERE revision_id = ?', specimenFromRow),
  },
  session: { ids: 'SELECT session_id AS id FROM capture_session', read: readSession },
  break: {
    ids: 'SELECT break_id AS id FROM break_end',
    read: (database, id) => ({ header: readHeader(database, id), end: readEnd(database, id) }),
  },
  evaluation: {
    ids: 'SELECT evaluation_id AS id FROM evaluation',
    read: rowReader<EvaluationRow, unknown>('SELECT * FROM evaluation WHERE evaluation_id = ?', evaluationFromRow),
  },
  assessment: {
    ids: 'SELECT assessment_id AS id FROM assessment',
    read: rowReader<AssessmentRow, unknown>('SELECT * FROM assessment WHERE assessment_id = ?', assessmentFromRow),
  },
  decision: {
    ids: 'SELECT decision_id AS id FROM decision',
    read: rowReader<DecisionRow, unknown>('SELECT * FROM decision WHERE decision_id = ?', decisionFromRow),
  },
}

/** Walks the chain and compares each entry with its record and each record with its entry; returns how many entries there are. */
export function verifyLedger(database: Database.Database, report: Report): number {
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
    const difference = differenceFromRecord(database, entry)
    if (difference !== null) report({ where, what: difference })
    entries += 1
    previousSeq = entry.seq
    previousHash = entry.hash
  }
  for (const [kind, { ids }] of Object.entries(recordKinds)) {
    const missing = prepared<{ id: number }>(
      database,
      `SELECT id FROM (${ids}) WHERE id NOT IN (SELECT record_id FROM ledger WHERE kind = ?) ORDER BY id`,
    ).all(kind)
    for (const { id } of missing) report({ where: `${kind} ${id}`, what: 'the record has no entry in the ledger' })
  }
  return entries
}

function differenceFromRecord(database: Database.Database, entry: LedgerRow): string | null {
  let record: unknown
  try {
    record = recordKinds[entry.kind].read(database, entry.record_id)
  } catch (thrown) {
    return `its record cannot be read: ${thrown instanceof Error ? thrown.message : String(thrown)}`
  }
  if (record === undefined) return 'its record is gone'
  return canonicalJson(record) === entry.content ? null : 'the record differs from what the ledger holds of it'
}
