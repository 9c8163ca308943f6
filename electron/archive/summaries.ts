import type Database from 'better-sqlite3'
import type { BreakSummary, SpecimenSummary } from '#contract/records/break.ts'
import type { ForceScale } from '#contract/records/force.ts'
import { verificationOf } from '#domain/calibration/verificationOf.ts'
import { shearStrengthMPa } from '#domain/strength.ts'
import { calibration } from './calibrations.ts'
import { type SpecimenRow, specimenFromRow } from './specimens.ts'

/** One line of a list of breaks as the join below returns it. */
export type BreakSummaryRow = {
  break_id: number
  started_at: string
  ending: BreakSummary['ending']
  specimen_id: number | null
  number: string | null
  adhesive: string | null
  joint_type: string | null
  exposure: string | null
  area_mm2: number | null
  outcome: BreakSummary['outcome']
  peak_n: number | null
  sampling_bound_percent: number | null
  flags: string | null
  scale: string
  wood_failure_percent: number | null
  failure_pattern: BreakSummary['failurePattern']
  note: string | null
  set_aside: string | null
  demo: number | null
}

/** Columns and joins of a break with the newest of everything beside it; add WHERE on `b` (break_current) or `s` (specimen_current). */
export const breakSummaryText = `
  SELECT b.break_id, b.started_at, x.ending, b.specimen_id, r.number, r.adhesive, r.joint_type, r.exposure, r.area_mm2,
    b.outcome, b.peak_n, e.sampling_bound_percent, e.flags, coalesce(e.scale, h.scale) AS scale,
    b.wood_failure_percent, a.failure_pattern, a.note, b.set_aside, r.demo
  FROM break_current b
  JOIN break_header h ON h.break_id = b.break_id
  LEFT JOIN break_end x ON x.break_id = b.break_id
  LEFT JOIN specimen_current s ON s.specimen_id = b.specimen_id
  LEFT JOIN specimen_revision r ON r.revision_id = s.revision_id
  LEFT JOIN evaluation e ON e.evaluation_id = b.evaluation_id
  LEFT JOIN assessment a ON a.assessment_id = b.assessment_id`

// The JSON below was written by this folder from values that the contract had parsed, so a row of a long list is not parsed again.

/** A break's line of a list as the contract has it. */
export function breakSummaryFromRow(database: Database.Database, row: BreakSummaryRow): BreakSummary {
  const scale: ForceScale = JSON.parse(row.scale)
  return {
    breakId: row.break_id,
    startedAt: row.started_at,
    ending: row.ending,
    specimenId: row.specimen_id,
    number: row.number,
    adhesive: row.adhesive,
    jointType: row.joint_type,
    exposure: row.exposure,
    areaMm2: row.area_mm2,
    outcome: row.outcome,
    peakN: row.peak_n,
    overruled: null,
    strengthMPa: row.peak_n === null || row.area_mm2 === null ? null : shearStrengthMPa(row.peak_n, row.area_mm2),
    samplingBoundPercent: row.sampling_bound_percent,
    flags: row.flags === null ? [] : JSON.parse(row.flags),
    scaleKind: scale.kind,
    verification:
      scale.kind === 'calibration' && row.peak_n !== null
        ? verificationOf(calibration(database, scale.calibrationId), row.peak_n)
        : null,
    woodFailurePercent: row.wood_failure_percent,
    failurePattern: row.failure_pattern,
    note: row.note ?? '',
    setAside: row.set_aside,
    setAsideCause: null,
    demo: row.demo === 1,
  }
}

/** A specimen's line of a list: its newest revision and its break in force. */
export function specimenSummary(
  database: Database.Database,
  revision: SpecimenRow,
  inForce: BreakSummaryRow | undefined,
): SpecimenSummary {
  return {
    ...specimenFromRow(revision),
    breakInForce: inForce === undefined ? null : breakSummaryFromRow(database, inForce),
  }
}
