// Held by tests/archive/specimens/import/judgeImport.spec.ts.

import type { ImportedValues } from '#contract/specimens/importedResult.ts'
import { caseFolded, folded, naturalKey } from '#domain/text/naturalOrder.ts'
import type { Database } from '../../core/database.ts'
import { prepared } from '../../core/prepared.ts'
import { typedSetAside } from '../../lists/countsOfSpecimen.ts'

/** What the archive holds of a specimen and of one result without a curve of it, as a table would say it. */
export type KnownBlock = {
  specimenId: number
  number: string
  values: Omit<ImportedValues, 'number'>
  /** A person set its result aside. */
  setAside: boolean
}

/**
 * A specimen with the results that it has. `broken`: a break of its own counts; `open`: all that is known of it came with imports
 * that were set aside, so that another one may say it anew.
 */
export type KnownSpecimen = { specimenId: number; number: string; broken: boolean; open: boolean; blocks: KnownBlock[] }

type Row = Omit<ImportedValues, 'number'> & { specimenId: number; number: string; hasResult: number; aside: number }

const columns = `
  r.specimen_id AS specimenId, r.number, r.adhesive, r.lot, coalesce(r.wood, '') AS wood, coalesce(r.board, '') AS board,
  r.joint_type AS jointType, r.exposure, r.place, r.bond_line_gap_mm AS bondLineGapMm, r.overlap_length_mm AS overlapLengthMm,
  r.overlap_width_mm AS overlapWidthMm, r.area_mm2 AS areaMm2, r.glued_on AS gluedOn,
  t.typed_result_id IS NOT NULL AS hasResult, ${typedSetAside('t')} AS aside, t.peak_n AS peakN, t.strength_mpa AS strengthMPa,
  t.wood_failure_percent AS woodFailurePercent, t.failure_pattern AS failurePattern, t.broken_on AS brokenOn,
  t.age_months AS ageMonths, coalesce(t.note, '') AS note`

/**
 * Whether nothing is known of the row `s` of specimen_current but what imports said that were set aside, in SQL: no break, no
 * glue-up, and nobody corrected it since.
 */
const isOpen = `(s.typed_result_in_force IS NULL AND s.glue_up_id IS NULL
  AND NOT EXISTS (SELECT 1 FROM break_current WHERE specimen_id = s.specimen_id)
  AND EXISTS (SELECT 1 FROM typed_result o JOIN import_run i ON i.import_run_id = o.import_run_id
    WHERE o.specimen_id = s.specimen_id AND i.recorded_at =
      (SELECT recorded_at FROM specimen_revision WHERE revision_id = s.revision_id)))`

/** Finds the specimen of a number as people write it, with its results without a curve; null: there is none. */
export function specimenFinder(database: Database): (number: string) => KnownSpecimen | null {
  const current = prepared<{ specimen_id: number; number: string; break_in_force: number | null; open: number }>(
    database,
    `SELECT s.specimen_id, r.number, s.break_in_force, ${isOpen} AS open
     FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     WHERE s.number_folded = ? OR s.number_key = ?`,
  )
  const results = prepared<Row>(
    database,
    `SELECT ${columns} FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     LEFT JOIN typed_result t ON t.specimen_id = s.specimen_id WHERE s.specimen_id = ? ORDER BY t.typed_result_id`,
  )
  return (number) => {
    const found = current
      .all(caseFolded(number), naturalKey(number))
      .find((one) => folded(one.number) === folded(number))
    if (found === undefined) return null
    const rows = results.all(found.specimen_id)
    return {
      specimenId: found.specimen_id,
      number: found.number,
      broken: found.break_in_force !== null,
      open: found.open === 1,
      blocks: rows.map(blockOf),
    }
  }
}

function blockOf({ specimenId, number, hasResult: _hasResult, aside, ...values }: Row): KnownBlock {
  return { specimenId, number, values, setAside: aside === 1 }
}

/** Whether a specimen has a result without a curve, by what is read of it. */
export function hasTypedResult({ values }: KnownBlock): boolean {
  return values.peakN !== null || values.strengthMPa !== null
}

/** A block of an earlier import that no number of its file names, with its place and the file. */
export type ImportedBlock = KnownBlock & {
  row: number
  column: string | null
  fileName: string
  fileSha256: string
  sheet: string | null
  /** As of a `KnownSpecimen`. */
  open: boolean
}

/** Every block that was imported without a number of its own, in the order in which they were stored. */
export function unnumberedImports(database: Database): ImportedBlock[] {
  return prepared<Row & Omit<ImportedBlock, 'values' | 'setAside' | 'open'> & { open: number }>(
    database,
    `SELECT ${columns}, ${isOpen} AS open, t.sheet_row AS "row", t.sheet_column AS "column", i.file_name AS fileName, i.file_sha256 AS fileSha256,
       json_extract(i.mapping, '$.sheet') AS sheet
     FROM typed_result t JOIN import_run i ON i.import_run_id = t.import_run_id
     JOIN label l ON l.specimen_id = t.specimen_id
     JOIN specimen_current s ON s.specimen_id = t.specimen_id
     JOIN specimen_revision r ON r.specimen_id = t.specimen_id AND r.revision = coalesce((SELECT max(revision)
       FROM specimen_revision WHERE specimen_id = t.specimen_id AND recorded_at = i.recorded_at), 1)
     WHERE t.source = 'import' ORDER BY t.typed_result_id`,
  )
    .all()
    .map(({ row, column, fileName, fileSha256, sheet, open, ...block }) => ({
      ...blockOf(block),
      open: open === 1,
      row,
      column,
      fileName,
      fileSha256,
      sheet,
    }))
}

/** Whether a specimen is open, as a `KnownSpecimen` may be. */
export function isOpenSpecimen(database: Database, specimenId: number): boolean {
  const found = prepared<{ open: number }>(
    database,
    `SELECT ${isOpen} AS open FROM specimen_current s WHERE s.specimen_id = ?`,
  ).get(specimenId)
  return found?.open === 1
}
