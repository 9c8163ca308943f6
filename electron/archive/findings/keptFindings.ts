import {
  type KeptFinding,
  type KeptFindingFields,
  type KeptFindingHead,
  keptFinding,
  keptFindingFields,
  keptFindingHead,
} from '#contract/findings/keptFinding.ts'
import { json, plain } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { recordKind, storeRecord } from '../core/recordKind.ts'
import { numberedApart, readRecords } from '../core/recordTable.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { inTransaction } from '../core/transaction.ts'
import { type ReadableRows, readableRows } from '../lists/readableRows.ts'

/** One version of a finding that a person kept. */
export const keptFindingKind = recordKind({
  name: 'kept-finding',
  noun: 'version of a kept finding',
  table: 'kept_finding_revision',
  identity: numberedApart('revisionId'),
  instant: 'recordedAt',
  schema: keptFinding,
  columns: { keptFindingId: plain, revision: plain, recordedAt: plain, by: plain, reason: plain, fields: json },
  topics: ({ keptFindingId }) => [`kept-finding ${keptFindingId}`],
})

/** The newest version of a kept finding. Throws the trouble "not-found" when there is none. */
export function newestKeptFinding(database: Database, keptFindingId: number): KeptFinding {
  const newest = 'WHERE kept_finding_id = ? ORDER BY revision DESC LIMIT 1'
  const [found] = readRecords(database, keptFindingKind, newest, keptFindingId)
  if (found === undefined) throw notFound('kept finding', keptFindingId)
  return found
}

/** The newest version of every finding that is on the list and can be read, last kept first; their blocks stay unread. */
export function keptFindings(database: Database): ReadableRows<KeptFindingHead> {
  const ids = prepared<{ id: number }>(
    database,
    `SELECT max(revision_id) AS id FROM kept_finding_revision GROUP BY kept_finding_id ORDER BY id DESC`,
  )
    .all()
    .map(({ id }) => id)
  const { rows, ...unreadable } = readableRows(keptFindingKind.noun, ids, (id) => headOf(database, id))
  return { rows: rows.filter(({ listed }) => listed).map(({ listed: _, ...head }) => head), ...unreadable }
}

const storedHead = keptFindingHead.extend({ listed: keptFindingFields.shape.listed })

function headOf(database: Database, revisionId: number): ReturnType<typeof storedHead.parse> {
  const { fields, ...version } = prepared<Record<string, unknown> & { fields: string }>(
    database,
    // What is no JSON is named as a record that cannot be read when it is parsed here; SQLite would refuse it for all
    `SELECT kept_finding_id AS keptFindingId, revision, recorded_at AS recordedAt, by, reason,
       iif(json_valid(fields), json_remove(fields, '$.blocks'), fields) AS fields,
       iif(json_valid(fields), json_array_length(fields, '$.blocks'), NULL) AS blocks
     FROM kept_finding_revision WHERE revision_id = ?`,
  ).get(revisionId)!
  return storedHead.parse({ ...version, ...JSON.parse(fields) })
}

/**
 * Keeps a finding under its name, or a newer version of one; the versions before stay. Throws the trouble "conflict" where another
 * one on the list has the name.
 */
export function keepFinding(
  database: Database,
  keptFindingId: number | null,
  fields: KeptFindingFields,
  recordedAt: string,
  by: string,
  reason: string,
): KeptFinding {
  return inTransaction(database, () => {
    const same = (one: KeptFindingHead) => one.keptFindingId !== keptFindingId && one.name === fields.name
    if (keptFindings(database).rows.some(same))
      throw conflict(`There is a finding of the name “${fields.name}” already.`, 'Give this one another name.')
    if (keptFindingId !== null) {
      const { revision } = newestKeptFinding(database, keptFindingId)
      return store(database, { keptFindingId, revision: revision + 1, recordedAt, by, reason, fields })
    }
    const { last } = prepared<{ last: number }>(
      database,
      'SELECT coalesce(max(kept_finding_id), 0) AS last FROM kept_finding_revision',
    ).get()!
    return store(database, { keptFindingId: last + 1, revision: 1, recordedAt, by, reason, fields })
  })
}

/** Takes a finding off the list by a version that says so. Throws the trouble "not-found" when there is none. */
export function unlistFinding(
  database: Database,
  keptFindingId: number,
  recordedAt: string,
  by: string,
  reason: string,
): KeptFinding {
  return inTransaction(database, () => {
    const { revision, fields } = newestKeptFinding(database, keptFindingId)
    const unlisted = { ...fields, listed: false }
    return store(database, { keptFindingId, revision: revision + 1, recordedAt, by, reason, fields: unlisted })
  })
}

function store(database: Database, version: KeptFinding): KeptFinding {
  const stored = storeRecord(database, keptFindingKind, version)
  touch(database, 'kept-findings')
  return stored
}
