import { type Specimen, type SpecimenFields, specimen } from '#contract/specimens/specimen.ts'
import { caseFolded, folded, naturalKey } from '#domain/text/naturalOrder.ts'
import { nameNew } from '../catalogue/newNames.ts'
import { type Written, writtenOfSpecimen } from '../catalogue/written.ts'
import { absent, plain, truth } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { recordKind, storeRecord } from '../core/recordKind.ts'
import { numberedApart, readRecords } from '../core/recordTable.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { inTransaction } from '../core/transaction.ts'
import { refreshSpecimens } from '../lists/refresh.ts'

/** One version of what is known of a specimen. */
export const specimenKind = recordKind({
  name: 'specimen',
  noun: 'revision',
  table: 'specimen_revision',
  identity: numberedApart('revisionId'),
  instant: 'recordedAt',
  schema: specimen,
  columns: {
    specimenId: plain,
    revision: plain,
    recordedAt: plain,
    by: plain,
    reason: plain,
    fields: {
      number: plain,
      adhesive: plain,
      lot: plain,
      wood: absent(plain),
      board: absent(plain),
      jointType: plain,
      exposure: plain,
      bondLineGapMm: plain,
      overlapLengthMm: plain,
      overlapWidthMm: plain,
      areaMm2: plain,
      gluedOn: plain,
      place: plain,
      notes: plain,
      demo: truth,
    },
  },
})

type Taken = { specimen_id: number; number: string }

/** Throws the trouble "conflict" where one of the numbers is that of a specimen other than `own`. One look for all of them. */
function refuseTakenNumbers(database: Database, numbers: readonly string[], own: number | null): void {
  const wanted = new Set(numbers.map(folded))
  const alike = prepared<Taken>(
    database,
    `SELECT s.specimen_id, r.number FROM (
       SELECT specimen_id, revision_id FROM specimen_current WHERE number_folded IN (SELECT value FROM json_each(?))
       UNION SELECT specimen_id, revision_id FROM specimen_current WHERE number_key IN (SELECT value FROM json_each(?))) s
     JOIN specimen_revision r ON r.revision_id = s.revision_id`,
  ).all(JSON.stringify(numbers.map(caseFolded)), JSON.stringify(numbers.map(naturalKey)))
  const taken = alike.find((other) => other.specimen_id !== own && wanted.has(folded(other.number)))
  if (taken !== undefined)
    throw numberTaken(numbers.find((number) => folded(number) === folded(taken.number)) ?? taken.number)
}

const numberTaken = (number: string) =>
  conflict(
    `There is a specimen with the number ${number} already.`,
    'Give each specimen its own number, as written on the specimen.',
  )

function storeRevision(database: Database, revision: Specimen): Specimen {
  const { specimenId, fields } = revision
  refuseTakenNumbers(database, [fields.number], specimenId)
  const stored = storeRecord(database, specimenKind, revision)
  refreshSpecimens(database, [specimenId])
  touchBreaksOf(database, specimenId)
  return stored
}

/** The summary of a break shows the fields of its specimen. */
export function touchBreaksOf(database: Database, specimenId: number): void {
  const breaks = prepared<{ break_id: number }>(database, 'SELECT break_id FROM break_current WHERE specimen_id = ?')
  for (const { break_id } of breaks.all(specimenId)) touch(database, `break ${break_id}`, `result ${break_id}`)
}

/** What specimens name, and who enters them, is in the catalogue from then on. */
function nameThings(database: Database, list: readonly SpecimenFields[], recordedAt: string, by: string): void {
  const names = new Map<string, Written>([['', { kind: 'operator', name: by, of: '' }]])
  for (const fields of list)
    for (const written of Object.values(writtenOfSpecimen(fields)))
      names.set(`${written.kind}\n${written.of}\n${written.name}`, written)
  nameNew(database, names.values(), recordedAt, by)
}

/**
 * Stores new specimens. Call it inside a transaction that brings their current rows up to date afterwards; until then no list
 * shows them.
 */
export function storeSpecimens(
  database: Database,
  list: readonly SpecimenFields[],
  recordedAt: string,
  by: string,
): Specimen[] {
  nameThings(database, list, recordedAt, by)
  let { last } = prepared<{ last: number }>(
    database,
    'SELECT coalesce(max(specimen_id), 0) AS last FROM specimen_revision',
  ).get()!
  refuseTakenNumbers(
    database,
    list.map(({ number }) => number),
    null,
  )
  const given = new Set<string>()
  return list.map((fields) => {
    last += 1
    if (given.has(folded(fields.number))) throw numberTaken(fields.number)
    given.add(folded(fields.number))
    return storeRecord(database, specimenKind, { specimenId: last, revision: 1, recordedAt, by, reason: '', fields })
  })
}

/** Adds specimens, all or none. */
export function addSpecimens(
  database: Database,
  list: readonly SpecimenFields[],
  recordedAt: string,
  by: string,
): Specimen[] {
  return inTransaction(database, () => {
    const stored = storeSpecimens(database, list, recordedAt, by)
    refreshSpecimens(
      database,
      stored.map(({ specimenId }) => specimenId),
    )
    return stored
  })
}

/** Adds one specimen. */
export function addSpecimen(database: Database, fields: SpecimenFields, recordedAt: string, by: string): Specimen {
  return addSpecimens(database, [fields], recordedAt, by)[0]!
}

/** Lays a corrected revision over the older ones, which stay. */
export function correctSpecimen(
  database: Database,
  specimenId: number,
  fields: SpecimenFields,
  recordedAt: string,
  by: string,
  reason: string,
): Specimen {
  return inTransaction(database, () => {
    const revision = specimenRevisions(database, specimenId).length + 1
    nameThings(database, [fields], recordedAt, by)
    return storeRevision(database, { specimenId, revision, recordedAt, by, reason, fields })
  })
}

/** Every revision, newest last. Throws the trouble "not-found" when there is none. */
export function specimenRevisions(database: Database, specimenId: number): Specimen[] {
  const revisions = readRecords(database, specimenKind, 'WHERE specimen_id = ? ORDER BY revision', specimenId)
  if (revisions.length === 0) throw notFound('specimen', specimenId)
  return revisions
}
