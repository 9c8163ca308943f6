import type Database from 'better-sqlite3'
import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import { ageMonths } from '#domain/programme/ageMonths.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'

/** What a group has in common, and its breaks in natural order of specimen number. */
export type BreakGroup = {
  /** null: the break belongs to no specimen and is alone in its group. */
  common:
    | (Pick<SpecimenFields, 'adhesive' | 'jointType' | 'bondLineGapMm' | 'exposure'> & {
        /** null: the day of glue-up is not known of any of them. */
        ageMonths: number | null
      })
    | null
  breakIds: number[]
}

type MemberRow = {
  break_id: number
  started_at: string
  glued_on: string | null
  adhesive: string
  joint_type: string
  bond_line_gap_mm: number | null
  exposure: string
}

const memberColumns = `b.break_id, b.started_at, r.glued_on, r.adhesive, r.joint_type, r.bond_line_gap_mm, r.exposure
  FROM break_current b
  JOIN specimen_current s ON s.specimen_id = b.specimen_id
  JOIN specimen_revision r ON r.revision_id = s.revision_id`

const ageOf = ({ glued_on, started_at }: MemberRow) => (glued_on === null ? null : ageMonths(glued_on, started_at))

/**
 * The breaks whose specimens agree with that of the given break in adhesive, joint type, bond line gap, exposure and age in
 * whole months. Names agree whatever their case; two gaps, or two ages, that are not known agree. Those that ended in a
 * break, by the program or by a person's word, the ones set aside and the given one among them.
 */
export function breakGroup(database: Database.Database, breakId: number): BreakGroup {
  if (prepared(database, 'SELECT 1 FROM break_current WHERE break_id = ?').get(breakId) === undefined)
    throw notFound('break', breakId)
  const own = prepared<MemberRow>(database, `SELECT ${memberColumns} WHERE b.break_id = ?`).get(breakId)
  if (own === undefined) return { common: null, breakIds: [breakId] }
  const rows = prepared<MemberRow>(
    database,
    `SELECT ${memberColumns}
     JOIN break_current ob ON ob.break_id = @breakId
     JOIN specimen_current o ON o.specimen_id = ob.specimen_id
     WHERE s.adhesive_key = o.adhesive_key AND s.joint_type_key = o.joint_type_key
       AND s.exposure_key = o.exposure_key AND r.bond_line_gap_mm IS @gapMm
       AND (b.outcome = 'break' OR b.break_id = @breakId)
     ORDER BY s.number_key, b.break_id`,
  ).all({ breakId, gapMm: own.bond_line_gap_mm })
  const age = ageOf(own)
  return {
    common: {
      adhesive: own.adhesive,
      jointType: own.joint_type,
      bondLineGapMm: own.bond_line_gap_mm,
      exposure: own.exposure,
      ageMonths: age,
    },
    breakIds: rows.filter((row) => ageOf(row) === age).map((row) => row.break_id),
  }
}
