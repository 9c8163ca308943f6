import { Trouble } from '#contract/errors.ts'
import type { Study, StudyFields } from '#contract/programme/study.ts'
import type { StudyRecord, StudySummary } from '#contract/programme/studyRecord.ts'
import { type ExtensionFault, extensionFault } from '#domain/programme/study/extension.ts'
import { mostBlocks, mostCells, planSizeFault } from '#domain/programme/study/planSize.ts'
import { folded } from '#domain/text/naturalOrder.ts'
import { nameNew } from '../catalogue/newNames.ts'
import { writtenOfStudy } from '../catalogue/written.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { storeRecord } from '../core/recordKind.ts'
import { readRecords } from '../core/recordTable.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { inTransaction } from '../core/transaction.ts'
import { glueUpsInForce } from '../lists/plannedBlock.ts'
import { type ReadableRows, readableRecords, readableRows } from '../lists/readableRows.ts'
import { studyTitles } from '../lists/studyTitles.ts'
import { allocatedOf, boardCounts, cellCounts, countsOfStudies, noBlocks, sumOf } from './blockCounts.ts'
import { studyKind } from './studyKinds.ts'

/** The newest version of a study. Throws the trouble "not-found" when there is none. */
export function newestStudy(database: Database, studyId: number): Study {
  const [newest] = readRecords(database, studyKind, 'WHERE study_id = ? ORDER BY revision DESC LIMIT 1', studyId)
  if (newest === undefined) throw notFound('study', studyId)
  return newest
}

/** Every study that can be read, newest first. */
export function studies(database: Database): ReadableRows<StudySummary> {
  const ids = prepared<{ id: number }>(
    database,
    'SELECT DISTINCT study_id AS id FROM study_revision ORDER BY study_id DESC',
  ).all()
  const counts = countsOfStudies(database)
  return readableRows(
    'study',
    ids.map(({ id }) => id),
    (studyId) => ({ ...newestStudy(database, studyId), counts: counts.get(studyId) ?? noBlocks }),
  )
}

/** A study with its versions that can be read, and what became of its blocks. */
export function study(database: Database, studyId: number): StudyRecord {
  const current = newestStudy(database, studyId)
  const { rows, unreadable } = readableRecords(database, studyKind, 'WHERE study_id = ? ORDER BY revision', studyId)
  const cells = cellCounts(database, studyId)
  const runnings = prepared<{ first: number | null; last: number | null }>(
    database,
    'SELECT min(running) AS first, max(running) AS last FROM block WHERE study_id = ?',
  ).get(studyId)!
  return {
    current,
    revisions: rows,
    counts: sumOf(cells),
    cells,
    boards: boardCounts(database, studyId),
    ...workOn(database, studyId),
    runnings: runnings.first === null || runnings.last === null ? null : { first: runnings.first, last: runnings.last },
    ...(unreadable === undefined ? {} : { unreadable }),
  }
}

/** The glue-ups of a study, and the breaking sessions of its pulls. */
function workOn(database: Database, studyId: number): Pick<StudyRecord, 'glueUps' | 'sessions'> {
  const glueUps = prepared<StudyRecord['glueUps'][number]>(
    database,
    `SELECT glue_up_id AS glueUpId, json_extract(fields, '$.gluedOn') AS gluedOn,
       (SELECT count(*) FROM glued_block b WHERE b.glue_up_id = u.glue_up_id) AS blocks
     FROM ${glueUpsInForce} u WHERE study_id = ? ORDER BY glue_up_id`,
  ).all(studyId)
  const sessions = prepared<StudyRecord['sessions'][number]>(
    database,
    `SELECT breaking_session_id AS breakingSessionId, title, started_at AS startedAt FROM breaking_session
     WHERE EXISTS (SELECT 1 FROM json_each(pulls) p WHERE json_extract(p.value, '$.studyId') = ?)
     ORDER BY breaking_session_id`,
  ).all(studyId)
  return { glueUps, sessions }
}

/** Throws the trouble "invalid-input" for a plan that no memory would hold. */
export function refuseLargePlan(fields: StudyFields): void {
  const fault = planSizeFault(fields)
  if (fault === null) return
  throw new Trouble(
    'invalid-input',
    fault.kind === 'cells'
      ? `The levels and ages of the study make ${fault.count} cells; a study may have ${mostCells}.`
      : `The study plans ${fault.count} blocks; a study may have ${mostBlocks}.`,
    'Divide it into several studies.',
  )
}

/** Keeps a new study. Throws the trouble "invalid-input" where it is too large, "conflict" where another has its title. */
export function addStudy(database: Database, fields: StudyFields, recordedAt: string, by: string): Study {
  refuseLargePlan(fields)
  return inTransaction(database, () => {
    refuseTakenTitle(database, fields.title, null)
    const { last } = prepared<{ last: number }>(
      database,
      'SELECT coalesce(max(study_id), 0) AS last FROM study_revision',
    ).get()!
    return storeVersion(database, { studyId: last + 1, revision: 1, recordedAt, by, reason: '', fields })
  })
}

/** Lays a newer version over the older ones, which stay. Throws the trouble "conflict" where it would touch what is allocated, "invalid-input" where it is too large. */
export function correctStudy(
  database: Database,
  studyId: number,
  fields: StudyFields,
  recordedAt: string,
  by: string,
  reason: string,
): Study {
  refuseLargePlan(fields)
  return inTransaction(database, () => {
    const before = newestStudy(database, studyId)
    if (folded(fields.title) !== folded(before.fields.title)) refuseTakenTitle(database, fields.title, studyId)
    const fault = extensionFault(before.fields, fields, allocatedOf(database, studyId))
    if (fault !== null) throw conflict(...faultWords(fault))
    return storeVersion(database, { studyId, revision: before.revision + 1, recordedAt, by, reason, fields })
  })
}

/** Where studies are chosen, they are told from one another by their titles. */
function refuseTakenTitle(database: Database, title: string, own: number | null): void {
  for (const [studyId, other] of studyTitles(database))
    if (studyId !== own && folded(other) === folded(title))
      throw conflict(`There is a study with the title “${other}” already.`, 'Give this one another title.')
}

function storeVersion(database: Database, version: Study): Study {
  nameNew(database, writtenOfStudy(version.fields), version.recordedAt, version.by)
  const stored = storeRecord(database, studyKind, version)
  touch(database, 'studies')
  return stored
}

function faultWords(fault: ExtensionFault): [message: string, hint: string] {
  switch (fault.kind) {
    case 'seed':
      return ['The blocks were allocated from the seed as it was.', 'Leave the seed; blocks that are added use it too.']
    case 'cells':
      return [
        `${fault.blocks} allocated blocks belong to ${fault.cells} cells that this version does not have.`,
        'Leave their levels and ages in the study; a pull that is not to be made is skipped, lost blocks are withdrawn.',
      ]
    case 'fewer-blocks':
      return [
        `A cell has ${fault.allocated} allocated blocks, more than this version plans.`,
        `Plan at least ${fault.allocated} blocks a cell.`,
      ]
    case 'fewer-spares':
      return [
        `A series has ${fault.allocated} allocated spares, more than this version plans.`,
        `Plan at least ${fault.allocated} spares a series.`,
      ]
    case 'board':
      return [
        `${fault.blocks} allocated blocks are cut from the board ${fault.name}.`,
        'Leave the board in the study with at least as many blocks.',
      ]
  }
}
