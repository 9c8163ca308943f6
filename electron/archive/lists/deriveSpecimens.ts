import { caseFolded, folded, naturalKey } from '#domain/text/naturalOrder.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'

/** What stands in force of one specimen: its newest revision as lists sort and search it, and its break that counts. */
export type SpecimenCurrentRow = {
  specimen_id: number
  revision_id: number
  number_folded: string
  number_key: string
  adhesive_key: string
  joint_type_key: string
  exposure_key: string
  area_mm2: number | null
  search: string
  demo: number
  break_in_force: number | null
  any_set_aside: number
  started_at: string | null
  peak_n: number | null
  wood_failure_percent: number | null
}

type SameAsFound =
  | 'specimen_id'
  | 'revision_id'
  | 'area_mm2'
  | 'demo'
  | 'break_in_force'
  | 'any_set_aside'
  | 'started_at'
  | 'peak_n'
  | 'wood_failure_percent'

type FoundRow = Pick<SpecimenCurrentRow, SameAsFound> &
  Record<'number' | 'adhesive' | 'joint_type' | 'exposure' | 'place' | 'notes', string>

const text = `
  SELECT r.specimen_id, r.revision_id, r.number, r.adhesive, r.joint_type, r.exposure, r.place, r.notes, r.area_mm2, r.demo,
    b.break_id AS break_in_force, b.started_at, b.peak_n, b.wood_failure_percent,
    EXISTS (SELECT 1 FROM break_current WHERE specimen_id = r.specimen_id AND set_aside IS NOT NULL) AS any_set_aside
  FROM specimen_revision r
  LEFT JOIN break_current b ON b.break_id = (SELECT max(break_id) FROM break_current
    WHERE specimen_id = r.specimen_id AND outcome = 'break' AND set_aside IS NULL)
  WHERE r.specimen_id IN (SELECT value FROM json_each(?))
    AND r.revision = (SELECT max(revision) FROM specimen_revision WHERE specimen_id = r.specimen_id)
  ORDER BY r.specimen_id`

/**
 * What the records say of each of some specimens now, in the order of their numbers; the current rows of their breaks must be
 * up to date. A number without a specimen gives no row.
 */
export function deriveSpecimens(database: Database, specimenIds: readonly number[]): SpecimenCurrentRow[] {
  return prepared<FoundRow>(database, text).all(JSON.stringify(specimenIds)).map(fromRow)
}

function fromRow({ number, adhesive, joint_type, exposure, place, notes, ...found }: FoundRow): SpecimenCurrentRow {
  return {
    ...found,
    // Not what looks the same: an older archive may hold two such numbers, and goes on doing so.
    number_folded: caseFolded(number),
    number_key: naturalKey(number),
    adhesive_key: naturalKey(adhesive),
    joint_type_key: naturalKey(joint_type),
    exposure_key: naturalKey(exposure),
    search: folded([number, adhesive, joint_type, exposure, place, notes].join('\n')),
  }
}
