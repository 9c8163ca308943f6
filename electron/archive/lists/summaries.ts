import type { BreakSummary } from '#contract/breaks/break.ts'
import type { OverruledPeak } from '#contract/breaks/decision.ts'
import type { CurveEvent, Flag } from '#contract/breaks/evaluation.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { verificationOf } from '#domain/calibration/verificationOf.ts'
import { flagsInForce } from '#domain/strength/overruledFlags.ts'
import { shearStrengthMPa } from '#domain/strength/strength.ts'
import { nameInForce } from '../catalogue/names.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { countsAsResult, resultsOf } from './countsOfSpecimen.ts'
import { isSimulated } from './simulated.ts'
import { verifyingCalibration } from './verifyingCalibration.ts'

/** One line of a list of breaks as the join below returns it. */
type BreakSummaryRow = {
  break_id: number
  started_at: string
  evaluation_id: number | null
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
  /** null where the peak is left as it is. */
  overruled_events: string | null
  scale: string
  wood_failure_percent: number | null
  failure_pattern: BreakSummary['failurePattern']
  note: string | null
  set_aside: string | null
  set_aside_cause: BreakSummary['setAsideCause']
  results_of_specimen: number
  demo: number | null
  simulated: number
} & OverruledRow

/** A person's word on a peak, beside the peak of the result in force; peak_kind null: the peak is left as it is. */
export type OverruledRow = {
  found_peak_n: number | null
  peak_kind: OverruledPeak['kind'] | null
  peak_by: string | null
  peak_reason: string | null
  peak_recorded_at: string | null
  peak_time_s: number | null
}

/** Its columns, of an evaluation `e` and a decision `p`. */
export const overruledColumns = `
    e.peak_n AS found_peak_n, p.kind AS peak_kind, p.by AS peak_by, p.reason AS peak_reason,
    p.recorded_at AS peak_recorded_at, p.sample_time_s AS peak_time_s`

/** What a specimen `s`, with its newest revision `r`, is made of, in SQL, under the names that the catalogue has for it. */
export const namedColumns = `${nameInForce('s.adhesive_id', 'r.adhesive')} AS adhesive,
    ${nameInForce('s.joint_type_id', 'r.joint_type')} AS joint_type, ${nameInForce('s.exposure_id', 'r.exposure')} AS exposure`

/** Columns and joins of a break with the newest of everything beside it; add WHERE on `b` (break_current) or `s` (specimen_current). */
const breakSummaryText = `
  SELECT b.break_id, b.started_at, b.evaluation_id, x.ending, b.specimen_id, r.number, ${namedColumns}, r.area_mm2,
    b.outcome, b.peak_n, e.sampling_bound_percent, e.flags,
    CASE WHEN p.decision_id IS NULL THEN NULL ELSE e.events END AS overruled_events, coalesce(e.scale, h.scale) AS scale,
    b.wood_failure_percent, a.failure_pattern, a.note, b.set_aside, b.set_aside_cause,
    CASE WHEN ${countsAsResult('b')} THEN ${resultsOf('b.specimen_id')} ELSE 0 END AS results_of_specimen, r.demo, ${isSimulated} AS simulated, ${overruledColumns}
  FROM break_current b
  JOIN break_header h ON h.break_id = b.break_id
  JOIN capture_session c ON c.session_id = h.session_id
  LEFT JOIN break_end x ON x.break_id = b.break_id
  LEFT JOIN specimen_current s ON s.specimen_id = b.specimen_id
  LEFT JOIN specimen_revision r ON r.revision_id = s.revision_id
  LEFT JOIN evaluation e ON e.evaluation_id = b.evaluation_id
  LEFT JOIN assessment a ON a.assessment_id = b.assessment_id
  LEFT JOIN decision p ON p.decision_id = b.peak_decision_id`

const someBreaks = `${breakSummaryText} WHERE b.break_id IN (SELECT value FROM json_each(?))`

/** The statement that finds the breaks of a specimen; its plan is looked at by a test. */
export const breaksOfSpecimenText = 'SELECT break_id FROM break_current WHERE specimen_id = ? ORDER BY break_id'

/** A break as lists show it, and the number of its result in force. */
export type ReadSummary = { summary: BreakSummary; inForceId: number | null }

/**
 * Looks some breaks up at once, and reads each when it is asked for; that throws the trouble "not-found" when there is none, and
 * what is wrong with it where it cannot be read.
 */
export function breakSummaries(database: Database, breakIds: readonly number[]): (breakId: number) => ReadSummary {
  const rows = new Map(
    breakIds.length === 0
      ? []
      : prepared<BreakSummaryRow>(database, someBreaks)
          .all(JSON.stringify(breakIds))
          .map((row) => [row.break_id, row]),
  )
  return (breakId) => {
    const row = rows.get(breakId)
    if (row === undefined) throw notFound('break', breakId)
    return { summary: summaryFromRow(database, row), inForceId: row.evaluation_id }
  }
}

/** One break. Throws the trouble "not-found" when there is none. */
export function readBreakSummary(database: Database, breakId: number): ReadSummary {
  return breakSummaries(database, [breakId])(breakId)
}

/** The numbers of every break of a specimen, newest last. */
export function breaksOfSpecimen(database: Database, specimenId: number): number[] {
  return prepared<{ break_id: number }>(database, breaksOfSpecimenText)
    .all(specimenId)
    .map((row) => row.break_id)
}

// The JSON below was written by the archive from values that the contract had parsed, so a row of a long list is not parsed again.

function summaryFromRow(database: Database, row: BreakSummaryRow): BreakSummary {
  const scale: ForceScale = JSON.parse(row.scale)
  const overruled = overruledFromRow(row)
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
    overruled,
    strengthMPa: strengthOf(row),
    // The bound is that of the peak found.
    samplingBoundPercent: overruled === null ? row.sampling_bound_percent : null,
    flags: flagsOf(database, row, overruled, scale),
    scaleKind: scale.kind,
    verification:
      scale.kind === 'calibration' && row.peak_n !== null
        ? verificationOf(verifyingCalibration(database, scale.calibrationId), row.peak_n)
        : null,
    woodFailurePercent: row.wood_failure_percent,
    failurePattern: row.failure_pattern,
    note: row.note ?? '',
    setAside: row.set_aside,
    setAsideCause: row.set_aside_cause,
    resultsOfSpecimen: row.results_of_specimen,
    demo: row.demo === 1,
    simulated: row.simulated === 1,
  }
}

/** null: nothing broke, the area is not known, or it is so small that the strength is beyond every number. */
function strengthOf({ outcome, peak_n: peakN, area_mm2: areaMm2 }: BreakSummaryRow): number | null {
  if (outcome !== 'break' || peakN === null || areaMm2 === null) return null
  const strengthMPa = shearStrengthMPa(peakN, areaMm2)
  return Number.isFinite(strengthMPa) ? strengthMPa : null
}

/** A person's word in place of the peak found; null: the peak is left as it is. */
export function overruledFromRow(row: OverruledRow): OverruledPeak | null {
  if (row.peak_kind === null) return null
  return {
    kind: row.peak_kind,
    by: row.peak_by ?? '',
    reason: row.peak_reason ?? '',
    recordedAt: row.peak_recorded_at ?? '',
    timeS: row.peak_time_s ?? 0,
    foundPeakN: row.found_peak_n,
  }
}

function flagsOf(database: Database, row: BreakSummaryRow, overruled: OverruledPeak | null, scale: ForceScale): Flag[] {
  const found: Flag[] = row.flags === null ? [] : JSON.parse(row.flags)
  const events: CurveEvent[] = row.overruled_events === null ? [] : JSON.parse(row.overruled_events)
  const calibration =
    overruled !== null && scale.kind === 'calibration'
      ? verifyingCalibration(database, scale.calibrationId).assessment.result
      : null
  return flagsInForce(found, events, overruled, row.peak_n, calibration)
}
