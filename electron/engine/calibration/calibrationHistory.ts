import type { Calibration } from '#contract/calibration/calibration.ts'
import type { CalibrationDrift, CalibrationSummary } from '#contract/calibration/calibrationRecords.ts'
import { driftBetween, driftFigures } from '#domain/calibration/control/calibrationDrift.ts'
import { isOverdue } from '#domain/calibration/dueDate.ts'

/** One line of the list of calibrations. */
export function calibrationSummary(
  calibration: Calibration,
  inForceId: number | null,
  nowInstant: string,
): CalibrationSummary {
  const { calibrationId, name, madeAt, by, source, device, readingUnit, supersedes, dueOn, assessment } = calibration
  const { degree, verifiedRangeN, expandedUncertaintyPercent } = assessment.result
  return {
    calibrationId,
    name,
    madeAt,
    by,
    source,
    device,
    readingUnit,
    supersedes,
    dueOn,
    overdue: isOverdue(dueOn, nowInstant),
    degree,
    class: assessment.result.class,
    verifiedRangeN,
    expandedUncertaintyPercent,
    readings: calibration.readings.length > 0 ? calibration.readings.length : calibration.rows.length,
    inForce: calibrationId === inForceId,
  }
}

/** Slope and zero of each calibration against the one before it of the same device and unit; oldest first, as given. */
export function driftOf(oldestFirst: readonly Calibration[]): CalibrationDrift[] {
  return oldestFirst.map((calibration, index) => {
    const { calibrationId, name, madeAt, circumstances, device, readingUnit } = calibration
    const previous = oldestFirst
      .slice(0, index)
      .findLast((older) => older.device === device && older.readingUnit === readingUnit)
    const figures = driftFigures(calibration)
    const change = previous === undefined ? null : driftBetween(driftFigures(previous), figures)
    return {
      calibrationId,
      previousId: previous?.calibrationId ?? null,
      name,
      madeAt,
      temperatureNote: circumstances?.temperatureNote ?? '',
      temperatureStartC: circumstances?.temperatureStartC ?? null,
      temperatureEndC: circumstances?.temperatureEndC ?? null,
      ...figures,
      slopeChangePercent: change?.slopeChangePercent ?? null,
      zeroChangeN: change?.zeroChangeN ?? null,
    }
  })
}
