import type { ObservedBreak } from '#domain/findings/observedBreak.ts'
import type { BrokenBlock } from '#domain/programme/calendar/pullOfBreak.ts'
import { nameInForce } from '../catalogue/names.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { inItsPull, type PlannedColumns, plannedColumns, plannedJoins } from '../lists/plannedBlock.ts'
import { isSimulated } from '../lists/simulated.ts'

type Row = Omit<ObservedBreak, 'simulated' | 'pullAgeMonths'> & PlannedColumns & { simulated: number }

const named = `${nameInForce('s.adhesive_id', 'r.adhesive')} AS adhesive,
       ${nameInForce('s.joint_type_id', 'r.joint_type')} AS jointType, ${nameInForce('s.exposure_id', 'r.exposure')} AS exposure,
       ${nameInForce('s.board_id', 'r.board')} AS board,
       ${plannedColumns}`

/**
 * Every break of a specimen that ended as one, with what counts of it now, in the order in which they were made; then the results
 * without a curve of specimens that have no break which counts. `pullOf` tells in which pull a block of a study was broken.
 */
export function observations(database: Database, pullOf: (block: BrokenBlock) => number | null): ObservedBreak[] {
  const rows = prepared<Row>(
    database,
    `SELECT b.specimen_id AS specimenId, b.break_id AS breakId, b.started_at AS startedAt, r.number, ${named}, r.bond_line_gap_mm AS bondLineGapMm, r.glued_on AS gluedOn,
       r.area_mm2 AS areaMm2, b.peak_n AS peakN, NULL AS strengthMPa, b.wood_failure_percent AS woodFailurePercent,
       b.set_aside AS setAside, (${isSimulated} OR s.demo) AS simulated, NULL AS ageMonths
     FROM break_current b
     JOIN break_header h ON h.break_id = b.break_id
     JOIN capture_session c ON c.session_id = h.session_id
     JOIN specimen_current s ON s.specimen_id = b.specimen_id
     JOIN specimen_revision r ON r.revision_id = s.revision_id
     ${plannedJoins}
     WHERE b.outcome = 'break' AND b.peak_n > 0 AND r.area_mm2 > 0
     ORDER BY b.break_id`,
  ).all()
  return [...rows, ...typedRows(database)].map((row) => ({ ...inItsPull(row, pullOf), simulated: row.simulated === 1 }))
}

/** The same of the newest result without a curve of each specimen without a break; one that is set aside says why. */
function typedRows(database: Database): Row[] {
  return prepared<Row>(
    database,
    `SELECT t.specimen_id AS specimenId, NULL AS breakId, coalesce(t.broken_on, t.recorded_at) AS startedAt, r.number, ${named}, r.bond_line_gap_mm AS bondLineGapMm,
       iif(t.broken_on IS NULL, NULL, r.glued_on) AS gluedOn, r.area_mm2 AS areaMm2, t.peak_n AS peakN,
       t.strength_mpa AS strengthMPa, t.wood_failure_percent AS woodFailurePercent,
       CASE WHEN s.typed_result_in_force IS NULL THEN d.reason END AS setAside, s.demo AS simulated, t.age_months AS ageMonths
     FROM typed_result t
     JOIN specimen_current s ON s.specimen_id = t.specimen_id
     JOIN specimen_revision r ON r.revision_id = s.revision_id
     ${plannedJoins}
     LEFT JOIN typed_result_decision d ON d.typed_result_decision_id = (SELECT max(typed_result_decision_id)
       FROM typed_result_decision WHERE typed_result_id = t.typed_result_id)
     WHERE s.break_in_force IS NULL AND (t.strength_mpa IS NOT NULL OR r.area_mm2 > 0)
       AND t.typed_result_id = coalesce(s.typed_result_in_force,
         (SELECT max(typed_result_id) FROM typed_result WHERE specimen_id = t.specimen_id))
     ORDER BY t.typed_result_id`,
  ).all()
}
