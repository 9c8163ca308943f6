// Held by tests/archive/lists/rebuild.spec.ts.
import type { TypedResult } from '#contract/specimens/typedResult.ts'
import { ageMonths } from '#domain/programme/ageMonths.ts'
import { caseFolded, folded, naturalKey } from '#domain/text/naturalOrder.ts'
import { loadsToFind } from '#words/breaks/shownInLists.ts'
import { specimenToFind } from '#words/specimens/specimenToFind.ts'
import { typedSourceToFind } from '#words/specimens/typedResultWords.ts'
import { calendarDayToFind } from '#words/units/times.ts'
import { type Named, nameReader } from '../catalogue/names.ts'
import { type NamedKey, type Written, writtenOfSpecimen } from '../catalogue/written.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { resultsOf, timesBroken, typedSetAside } from './countsOfSpecimen.ts'
import { isWithdrawn, withdrawnBecause } from './withdrawn.ts'

/**
 * What stands in force of one specimen: its newest revision as lists sort and search it, under the names that the catalogue has
 * for what it names, and its break that counts.
 */
export type SpecimenCurrentRow = {
  specimen_id: number
  revision_id: number
  number_folded: string
  number_key: string
  adhesive_key: string
  joint_type_key: string
  exposure_key: string
  adhesive_id: number | null
  lot_id: number | null
  wood_id: number | null
  board_id: number | null
  joint_type_id: number | null
  exposure_id: number | null
  place_id: number | null
  /** Its study and its glue-up, where it was planned and glued in one; and the age of its pull, null for a spare. */
  study_id: number | null
  glue_up_id: number | null
  pull_age_months: number | null
  /** Its age in months at the result that counts, or that of its pull where it has none. */
  age_months: number | null
  gap_mm: number | null
  /** `waiting` for the press; `broken`, with a result that counts; `lost`: withdrawn, or open although nothing of it counts. */
  standing: 'waiting' | 'broken' | 'lost'
  withdrawn: number
  /** How many of its breaks count; more than one is one too many. */
  results: number
  area_mm2: number | null
  search: string
  /** By which it is found: what it is made of, and behind the line feed those of its result. */
  figures: string
  demo: number
  break_in_force: number | null
  /** The newest result without a curve that is not set aside, where no break counts. */
  typed_result_in_force: number | null
  any_set_aside: number
  started_at: string | null
  peak_n: number | null
  strength_mpa: number | null
  wood_failure_percent: number | null
}

type SameAsFound =
  | 'specimen_id'
  | 'revision_id'
  | 'study_id'
  | 'glue_up_id'
  | 'pull_age_months'
  | 'gap_mm'
  | 'standing'
  | 'results'
  | 'area_mm2'
  | 'demo'
  | 'break_in_force'
  | 'typed_result_in_force'
  | 'any_set_aside'
  | 'started_at'
  | 'peak_n'
  | 'strength_mpa'
  | 'wood_failure_percent'

type FoundRow = Pick<SpecimenCurrentRow, SameAsFound> &
  Record<'number' | 'adhesive' | 'lot' | 'joint_type' | 'exposure' | 'place' | 'notes', string> &
  Record<'wood' | 'board' | 'withdrawn' | 'glued_on' | 'tested_on', string | null> &
  TypedRow &
  Record<'given_age_months' | 'overlap_length_mm' | 'overlap_width_mm', number | null>

/** Where a result without a curve comes from, as far as one stands for the specimen. */
type TypedRow = {
  typed_source: TypedResult['source'] | null
  sheet_row: number | null
  sheet_column: string | null
  file_name: string | null
  file_sha256: string | null
  resolution_n: number | null
  read_by: string | null
  typed_note: string | null
}

const text = `
  SELECT r.specimen_id, r.revision_id, r.number, r.adhesive, r.lot, r.wood, r.board, r.joint_type, r.exposure, r.place, r.notes,
    ${withdrawnBecause('r.specimen_id')} AS withdrawn, r.area_mm2, r.demo, r.bond_line_gap_mm AS gap_mm,
    p.study_id, g.glue_up_id, p.age_months AS pull_age_months, r.overlap_length_mm, r.overlap_width_mm, r.glued_on, coalesce(b.started_at, t.broken_on) AS tested_on,
    t.source AS typed_source, t.sheet_row, t.sheet_column, i.file_name, i.file_sha256, t.resolution_n, t.read_by, t.note AS typed_note,
    t.age_months AS given_age_months, ${resultsOf('r.specimen_id')} AS results,
    CASE WHEN b.break_id IS NOT NULL OR t.typed_result_id IS NOT NULL THEN 'broken'
      WHEN ${timesBroken('r.specimen_id')} > 0 OR ${isWithdrawn('r.specimen_id')} THEN 'lost' ELSE 'waiting' END AS standing,
    b.break_id AS break_in_force, t.typed_result_id AS typed_result_in_force,
    coalesce(b.started_at, t.broken_on, t.recorded_at) AS started_at, coalesce(b.peak_n, t.peak_n) AS peak_n,
    CASE WHEN b.break_id IS NULL THEN coalesce(t.peak_n / r.area_mm2, t.strength_mpa) ELSE b.peak_n / r.area_mm2 END AS strength_mpa,
    CASE WHEN b.break_id IS NULL THEN t.wood_failure_percent ELSE b.wood_failure_percent END AS wood_failure_percent,
    EXISTS (SELECT 1 FROM break_current WHERE specimen_id = r.specimen_id AND set_aside IS NOT NULL)
      OR EXISTS (SELECT 1 FROM typed_result o WHERE o.specimen_id = r.specimen_id AND ${typedSetAside('o')}) AS any_set_aside
  FROM specimen_revision r
  LEFT JOIN break_current b ON b.break_id = (SELECT max(break_id) FROM break_current
    WHERE specimen_id = r.specimen_id AND outcome = 'break' AND set_aside IS NULL)
  LEFT JOIN typed_result t ON b.break_id IS NULL AND t.typed_result_id = (SELECT max(typed_result_id) FROM typed_result o
    WHERE o.specimen_id = r.specimen_id AND NOT ${typedSetAside('o')})
  LEFT JOIN import_run i ON i.import_run_id = t.import_run_id
  LEFT JOIN glued_block g ON g.specimen_id = r.specimen_id
  LEFT JOIN block p ON p.block_id = g.block_id
  WHERE r.specimen_id IN (SELECT value FROM json_each(?))
    AND r.revision = (SELECT max(revision) FROM specimen_revision WHERE specimen_id = r.specimen_id)
  ORDER BY r.specimen_id`

/**
 * What the records say of each of some specimens now, in the order of their numbers; the current rows of their breaks must be
 * up to date. A number without a specimen gives no row.
 */
export function deriveSpecimens(database: Database, specimenIds: readonly number[]): SpecimenCurrentRow[] {
  const readName = nameReader(database)
  return prepared<FoundRow>(database, text)
    .all(JSON.stringify(specimenIds))
    .map((row) => fromRow(row, readName))
}

function fromRow(row: FoundRow, readName: (written: Written) => Named | null): SpecimenCurrentRow {
  const { number, adhesive, lot, wood, board, joint_type, exposure, place, notes, withdrawn, ...others } = row
  const { glued_on, tested_on, given_age_months, overlap_length_mm, overlap_width_mm, ...withTyped } = others
  const { typed, found } = typedApart(withTyped)
  const written = writtenOfSpecimen({
    ...{ adhesive, lot, wood: wood ?? '', board: board ?? '', jointType: joint_type, exposure, place },
  })
  const named = Object.fromEntries(
    Object.entries(written).map(([key, one]) => [key, readName(one) ?? { entryId: null, name: one.name }]),
  ) as Record<NamedKey, { entryId: number | null; name: string }>
  // As it is written, and as it is called now
  const standing = withdrawn === null ? '' : `withdrawn ${withdrawn}`
  const texts = [number, place, notes, standing, ...typed, ...Object.values(written).map(({ name }) => name)]
  const names = Object.values(named).map(({ name }) => name)
  const age_months = given_age_months ?? ageAtTest(glued_on, tested_on) ?? found.pull_age_months
  const made = specimenToFind({
    ...{ bondLineGapMm: found.gap_mm, areaMm2: found.area_mm2, gluedOn: glued_on, ageMonths: age_months },
    ...{ overlapLengthMm: overlap_length_mm, overlapWidthMm: overlap_width_mm },
  })
  return {
    ...found,
    // Not what looks the same: an older archive may hold two such numbers, and goes on doing so.
    number_folded: caseFolded(number),
    number_key: naturalKey(number),
    adhesive_key: naturalKey(named.adhesive.name),
    joint_type_key: naturalKey(named.jointType.name),
    exposure_key: naturalKey(named.exposure.name),
    adhesive_id: named.adhesive.entryId,
    lot_id: named.lot.entryId,
    wood_id: named.wood.entryId,
    board_id: named.board.entryId,
    joint_type_id: named.jointType.entryId,
    exposure_id: named.exposure.entryId,
    place_id: named.place.entryId,
    age_months,
    withdrawn: Number(withdrawn !== null),
    search: [...new Set([...texts, ...names].map(folded))].join('\n'),
    figures: [made, resultToFind(found, tested_on)].map((text) => `${folded(text)} `).join('\n'),
  }
}

type FoundResult = Pick<SpecimenCurrentRow, 'break_in_force' | 'peak_n' | 'strength_mpa' | 'wood_failure_percent'>

/** The moment of a break hangs on the time zone, the day that somebody wrote does not. */
function resultToFind(found: FoundResult, testedOn: string | null): string {
  const day = found.break_in_force === null ? calendarDayToFind(testedOn) : ''
  return `${day} ${loadsToFind(found.peak_n, found.strength_mpa, found.wood_failure_percent)}`
}

/** The age of a block at its result, months; null: one of the days is not known, or none of the calendar. */
export function ageAtTest(gluedOn: string | null, testedOn: string | null): number | null {
  if (gluedOn === null || testedOn === null) return null
  try {
    return ageMonths(gluedOn, testedOn)
  } catch {
    return null
  }
}

/** The texts by which a result without a curve is found, and what else stands in the row. */
function typedApart<Row extends TypedRow>(row: Row) {
  const { typed_source, sheet_row, sheet_column, file_name, file_sha256, resolution_n, read_by, typed_note, ...found } =
    row
  if (typed_source === null) return { typed: [], found }
  const source = typedSourceToFind({
    ...{ source: typed_source, row: sheet_row, column: sheet_column, resolutionN: resolution_n, readBy: read_by ?? '' },
    file: file_name === null ? null : { fileName: file_name, fileSha256: file_sha256 ?? '' },
  })
  return { typed: [source, typed_note ?? ''], found }
}
