import type { BrokenBlock } from '#domain/programme/calendar/pullOfBreak.ts'
import { type BreakGroup, type GroupMember, groupOf } from '#domain/strength/breakGroup.ts'
import { nameInForce } from '../catalogue/names.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { inItsPull, type PlannedColumns, plannedColumns, plannedJoins } from '../lists/plannedBlock.ts'

type MemberRow = Omit<GroupMember, 'pullAgeMonths'> & PlannedColumns

const memberColumns = `b.break_id AS breakId, b.started_at AS startedAt, b.outcome, r.number,
    ${nameInForce('s.adhesive_id', 'r.adhesive')} AS adhesive, ${nameInForce('s.joint_type_id', 'r.joint_type')} AS jointType,
    r.bond_line_gap_mm AS bondLineGapMm, ${nameInForce('s.exposure_id', 'r.exposure')} AS exposure, r.glued_on AS gluedOn,
    ${plannedColumns}
  FROM break_current b
  JOIN specimen_current s ON s.specimen_id = b.specimen_id
  JOIN specimen_revision r ON r.revision_id = s.revision_id
  ${plannedJoins}`

/**
 * The group of a break. The names that a list sorts by narrow the search; what makes a group is said by groupOf. `pullOf` tells in
 * which pull a block of a study was broken.
 */
export function breakGroup(
  database: Database,
  breakId: number,
  pullOf: (block: BrokenBlock) => number | null,
): BreakGroup {
  if (prepared(database, 'SELECT 1 FROM break_current WHERE break_id = ?').get(breakId) === undefined)
    throw notFound('break', breakId)
  const own = prepared<MemberRow>(database, `SELECT ${memberColumns} WHERE b.break_id = ?`).get(breakId)
  if (own === undefined) return { common: null, breakIds: [breakId] }
  const candidates = prepared<MemberRow>(
    database,
    `SELECT ${memberColumns}
     JOIN break_current ob ON ob.break_id = ?
     JOIN specimen_current o ON o.specimen_id = ob.specimen_id
     WHERE s.adhesive_key = o.adhesive_key AND s.joint_type_key = o.joint_type_key AND s.exposure_key = o.exposure_key`,
  ).all(breakId)
  return groupOf(
    inItsPull(own, pullOf),
    candidates.map((one) => inItsPull(one, pullOf)),
  )
}
