import type { ObservedBreak } from '#domain/findings/observedBreak.ts'
import { nameInForce } from '../catalogue/names.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { isSimulated } from '../lists/simulated.ts'

/** Every break of a specimen that ended as one, with what counts of it now, in the order in which they were made. */
export function observations(database: Database): ObservedBreak[] {
  const rows = prepared<Omit<ObservedBreak, 'simulated'> & { simulated: number }>(
    database,
    `SELECT b.specimen_id AS specimenId, b.break_id AS breakId, b.started_at AS startedAt, r.number, ${nameInForce('s.adhesive_id', 'r.adhesive')} AS adhesive,
       ${nameInForce('s.joint_type_id', 'r.joint_type')} AS jointType, r.bond_line_gap_mm AS bondLineGapMm,
       ${nameInForce('s.exposure_id', 'r.exposure')} AS exposure, r.glued_on AS gluedOn, r.area_mm2 AS areaMm2,
       b.peak_n AS peakN, b.wood_failure_percent AS woodFailurePercent, b.set_aside AS setAside,
       (${isSimulated} OR s.demo) AS simulated
     FROM break_current b
     JOIN break_header h ON h.break_id = b.break_id
     JOIN capture_session c ON c.session_id = h.session_id
     JOIN specimen_current s ON s.specimen_id = b.specimen_id
     JOIN specimen_revision r ON r.revision_id = s.revision_id
     WHERE b.outcome = 'break' AND b.peak_n > 0 AND r.area_mm2 > 0
     ORDER BY b.break_id`,
  ).all()
  return rows.map((row) => ({ ...row, simulated: row.simulated === 1 }))
}
