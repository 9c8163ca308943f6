import * as z from 'zod'
import { troubleMessage } from '../errors.ts'
import {
  accuracyClass,
  calibration,
  calibrationAssessment,
  calibrationRow,
  checkWeightReading,
  creepResult,
} from './calibration.ts'
import { liveReading } from './calibrationRoutine.ts'
import { finite, id, isoDate, isoInstant, positive } from './force.ts'

/** The force of a result against the calibration that it was found with. */
export const verification = z.strictObject({
  calibrationId: id,
  name: z.string(),
  verifiedRangeN: z.tuple([finite, finite]).nullable(),
  /** The force over the highest force applied in the calibration; above 1 it lies beyond all that is known. */
  timesVerified: finite.nullable(),
  /** Expanded uncertainty (k = 2) at the force; null outside the verified range, or where the calibration cannot say. */
  expandedUncertaintyN: finite.nonnegative().nullable(),
  expandedUncertaintyPercent: finite.nonnegative().nullable(),
})
export type Verification = z.infer<typeof verification>

/** A person's word on which calibration is in force from then on; null: none, forces are uncalibrated. The newest decides. */
export const calibrationDecision = z.strictObject({
  calibrationDecisionId: id,
  recordedAt: isoInstant,
  by: z.string().min(1),
  reason: z.string(),
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

/** Readings of the routine judged as chosen, with the rows that entered. */
export const routineAssessment = z.strictObject({
  rows: z.array(calibrationRow),
  creep: z.array(creepResult),
  assessment: calibrationAssessment,
})
export type RoutineAssessment = z.infer<typeof routineAssessment>

/** What the newest check says, and what to do. */
export const checkVerdict = z.strictObject({
  standing: z.enum(['too-few', 'in-control', 'watch', 'outside']),
  sentence: z.string(),
  action: z.string(),
  lowerN: finite.nullable(),
  upperN: finite.nullable(),
})
export type CheckVerdict = z.infer<typeof checkVerdict>

/** Checks of one weight under one calibration, oldest first, with the charts of their deviations (indicated minus expected), N. */
export const checkHistory = z.strictObject({
  calibrationId: id,
  weight: z.string(),
  checks: z.array(z.strictObject({ ...checkWeightReading.shape, deviationN: finite })),
  verdict: checkVerdict,
  /** Limits from the first eight; null before there are two. movingRanges has one less than checks. */
  individuals: z
    .strictObject({
      centre: finite,
      lower: finite,
      upper: finite,
      movingRanges: z.array(finite),
      meanMovingRange: finite,
      movingRangeUpper: finite,
    })
    .nullable(),
  /** Weighted average of the checks after the first eight; null before there are nine. */
  ewma: z.strictObject({ smoothed: z.array(finite), lower: finite, upper: finite }).nullable(),
})
export type CheckHistory = z.infer<typeof checkHistory>

/** zero: take all off, then go on. load: hang the check weight, then go on. done: the check is stored. */
export const checkState = z.strictObject({
  phase: z.enum(['idle', 'zero', 'load', 'waiting-for-steady', 'averaging', 'done']),
  weights: z.array(z.string()),
  expectedN: positive.nullable(),
  live: liveReading,
  problem: troubleMessage.nullable(),
  /** The check just stored, and the word on it. */
  result: z.strictObject({ check: checkWeightReading, verdict: checkVerdict }).nullable(),
})
export type CheckState = z.infer<typeof checkState>
