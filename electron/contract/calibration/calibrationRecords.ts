import * as z from 'zod'
import { finite, id, isoDate, isoInstant, kept } from '../values.ts'
import { calibration } from './calibration.ts'
import { accuracyClass } from './calibrationAssessment.ts'

/** A person's word on which calibration is in force from then on; null: none, forces are uncalibrated. The newest decides. */
export const calibrationDecision = z.strictObject({
  calibrationDecisionId: id,
  recordedAt: isoInstant,
  by: kept.min(1),
  reason: kept,
  calibrationId: id.nullable(),
})
export type CalibrationDecision = z.infer<typeof calibrationDecision>

/** One line of the list of calibrations. */
export const calibrationSummary = z.strictObject({
  calibrationId: id,
  name: z.string(),
  madeAt: isoInstant,
  by: z.string(),
  source: z.string(),
  device: calibration.shape.device,
  readingUnit: calibration.shape.readingUnit,
  supersedes: id.nullable(),
  dueOn: isoDate.nullable(),
  /** The due date has passed. */
  overdue: z.boolean(),
  degree: z.int(),
  class: accuracyClass,
  verifiedRangeN: z.tuple([finite, finite]).nullable(),
  expandedUncertaintyPercent: finite.nullable(),
  readings: z.int().nonnegative(),
  inForce: z.boolean(),
})
export type CalibrationSummary = z.infer<typeof calibrationSummary>

/** How a calibration stands against the one before it of the same device; changes are null for the first. */
export const calibrationDrift = z.strictObject({
  calibrationId: id,
  previousId: id.nullable(),
  name: z.string(),
  madeAt: isoInstant,
  temperatureNote: z.string(),
  temperatureStartC: finite.nullable(),
  temperatureEndC: finite.nullable(),
  /** Mean slope from the zero point to the highest force applied, N per unit of the reading. */
  slopeN: finite,
  slopeChangePercent: finite.nullable(),
  /** Reading without load. */
  zeroReading: finite,
  /** Change of the zero, in N by the newer slope. */
  zeroChangeN: finite.nullable(),
})
export type CalibrationDrift = z.infer<typeof calibrationDrift>
