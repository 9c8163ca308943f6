import type {
  DialReading,
  ImportRunSummary,
  TypedResult,
  TypedResultDecision,
  TypedResultSummary,
  TypedResultWord,
  TypedSetAsideCause,
} from '#contract/specimens/typedResult.ts'
import type { Row } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { storeRecord } from '../core/recordKind.ts'
import { readRecord } from '../core/recordTable.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'
import { inTransaction } from '../core/transaction.ts'
import { typedSetAside } from '../lists/countsOfSpecimen.ts'
import { refreshSpecimens } from '../lists/refresh.ts'
import { requireStored } from '../lists/stored.ts'
import { importRunKind, typedResultDecisionKind, typedResultKind } from './typedResultKinds.ts'

type SummaryRow = Row & {
  area_mm2: number | null
  file_name: string | null
  file_sha256: string | null
  word: string | null
  word_by: string
  word_reason: string
  word_at: string
  word_cause: TypedSetAsideCause | null
}

const summaryText = `
  SELECT t.*, r.area_mm2, i.file_name, i.file_sha256, d.kind AS word, d.by AS word_by, d.reason AS word_reason,
    d.recorded_at AS word_at, d.cause AS word_cause
  FROM typed_result t
  JOIN specimen_current s ON s.specimen_id = t.specimen_id
  JOIN specimen_revision r ON r.revision_id = s.revision_id
  LEFT JOIN import_run i ON i.import_run_id = t.import_run_id
  LEFT JOIN typed_result_decision d ON d.typed_result_decision_id = (SELECT max(typed_result_decision_id)
    FROM typed_result_decision WHERE typed_result_id = t.typed_result_id)`

/** Every result without a curve of a specimen, newest last. */
export function typedResultsOf(database: Database, specimenId: number): TypedResultSummary[] {
  return prepared<SummaryRow>(database, `${summaryText} WHERE t.specimen_id = ? ORDER BY t.typed_result_id`)
    .all(specimenId)
    .map(summaryOf)
}

/**
 * Looks some results without a curve up at once, and reads each when it is asked for; that throws the trouble "not-found" when
 * there is none, and what is wrong with it where it cannot be read.
 */
export function typedResultSummaries(
  database: Database,
  typedResultIds: readonly number[],
): (typedResultId: number) => TypedResultSummary {
  const rows = new Map(
    typedResultIds.length === 0
      ? []
      : prepared<SummaryRow>(database, `${summaryText} WHERE t.typed_result_id IN (SELECT value FROM json_each(?))`)
          .all(JSON.stringify(typedResultIds))
          .map((row) => [Number(row.typed_result_id), row]),
  )
  return (typedResultId) => {
    const row = rows.get(typedResultId)
    if (row === undefined) throw notFound(typedResultKind.noun, typedResultId)
    return summaryOf(row)
  }
}

function summaryOf(row: SummaryRow): TypedResultSummary {
  const result: TypedResult = typedResultKind.parse(typedResultKind.contentOf(row))
  const computed = result.peakN === null || row.area_mm2 === null ? null : result.peakN / row.area_mm2
  const { file_name: fileName, file_sha256: fileSha256 } = row
  return {
    ...result,
    strengthMPa: computed ?? result.strengthMPa,
    file: fileName === null || fileSha256 === null ? null : { fileName, fileSha256 },
    setAside:
      row.word === 'set-aside'
        ? { by: row.word_by, reason: row.word_reason, recordedAt: row.word_at, cause: row.word_cause }
        : null,
  }
}

/** Records readings of a dial, all or none; a person's word on a joint that broke already is for whoever asks first. */
export function addDialReadings(
  database: Database,
  readings: readonly DialReading[],
  recordedAt: string,
  by: string,
): TypedResult[] {
  return inTransaction(database, () => {
    const stored = readings.map((reading) => {
      requireStored(database, 'specimen', reading.specimenId)
      return storeRecord(database, typedResultKind, {
        ...reading,
        ...{ recordedAt, by, source: 'dial', importRunId: null, row: null, column: null, strengthMPa: null },
        ageMonths: null,
      })
    })
    refreshSpecimens(database, [...new Set(stored.map(({ specimenId }) => specimenId))])
    return stored
  })
}

type NewWord = TypedResultWord & { recordedAt: string }

/** Records a person's word on a result without a curve. Throws the trouble "conflict" where it stands so already. */
export function decideTypedResult(database: Database, made: NewWord & { typedResultId: number }): TypedResultDecision {
  return inTransaction(database, () => {
    const { specimenId } = readRecord(database, typedResultKind, made.typedResultId)
    const { setAside } = typedResultSummaries(database, [made.typedResultId])(made.typedResultId)
    if ((setAside !== null) === (made.kind === 'set-aside'))
      throw conflict(
        `Result ${made.typedResultId} is ${setAside === null ? 'used' : 'set aside'} already.`,
        'Load the page again and see who did it.',
      )
    const stored = storeRecord(database, typedResultDecisionKind, made)
    refreshSpecimens(database, [specimenId])
    return stored
  })
}

/** Sets aside, or takes back, every result of an import that does not stand so already; returns how many. */
export function decideImport(database: Database, importRunId: number, word: NewWord): number {
  return inTransaction(database, () => {
    readRecord(database, importRunKind, importRunId)
    const results = prepared<{ id: number; specimen_id: number; aside: number }>(
      database,
      `SELECT t.typed_result_id AS id, t.specimen_id, ${typedSetAside('t')} AS aside FROM typed_result t
       WHERE t.import_run_id = ? ORDER BY t.typed_result_id`,
    )
      .all(importRunId)
      .filter(({ aside }) => (aside === 1) !== (word.kind === 'set-aside'))
    for (const { id } of results) storeRecord(database, typedResultDecisionKind, { ...word, typedResultId: id })
    refreshSpecimens(
      database,
      results.map(({ specimen_id }) => specimen_id),
    )
    return results.length
  })
}

/** Every file that was brought in, newest first. */
export function importRuns(database: Database): ImportRunSummary[] {
  return prepared<Row & { results: number; in_use: number }>(
    database,
    `SELECT i.*, count(t.typed_result_id) AS results,
       coalesce(sum(t.typed_result_id IS NOT NULL AND NOT ${typedSetAside('t')}), 0) AS in_use
     FROM import_run i LEFT JOIN typed_result t ON t.import_run_id = i.import_run_id
     GROUP BY i.import_run_id ORDER BY i.import_run_id DESC`,
  )
    .all()
    .map((row) => ({
      ...importRunKind.parse(importRunKind.contentOf(row)),
      results: row.results,
      inUse: row.in_use,
    }))
}
