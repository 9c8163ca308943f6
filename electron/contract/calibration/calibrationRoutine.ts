import * as z from 'zod'
import { troubleMessage } from '../errors.ts'
import { finite, isoInstant, positive } from '../values.ts'
import { calibrationAssessment, creepResult } from './calibrationAssessment.ts'
import { calibrationPlan } from './calibrationPlan.ts'
import { readingUnit } from './forceScale.ts'
import { calibrationReading, calibrationRow, loadDirection } from './reading.ts'

/**
 * planning: no routine runs. preloading: load and unload once more. zero: take all weights off, then go on. step: hang
 * the weights of the current position, then go on. waiting-for-steady and averaging: hands off. holding: it is read, and
 * the load stays on for the creep. review: all is read.
 */
export const routinePhase = z.enum([
  'planning',
  'preloading',
  'zero',
  'step',
  'waiting-for-steady',
  'averaging',
  'holding',
  'review',
])
export type RoutinePhase = z.infer<typeof routinePhase>

/** One place of the routine, in the order in which the loads are applied; no weights: the zero point. */
export const routinePosition = z.strictObject({
  run: z.int().positive(),
  direction: loadDirection,
  weights: z.array(z.string()),
  forceN: finite.nonnegative(),
  standing: z.enum(['ahead', 'taken', 'skipped']),
  /** Index of the reading that counts; null unless taken. */
  reading: z.int().nonnegative().nullable(),
})
export type RoutinePosition = z.infer<typeof routinePosition>

/** A reading as it was taken, with what the fit through all readings so far makes of it. */
export const routineReading = z.strictObject({
  ...calibrationReading.shape,
  /** Force by the running fit minus force applied, N; null while there is no fit. */
  residualN: finite.nullable(),
})

/** What the signal does now. Readings in the unit of the device; waitedS, mean, sd and count only while a reading is taken. */
export const liveReading = z.strictObject({
  latest: finite.nullable(),
  mean: finite.nullable(),
  sd: finite.nullable(),
  count: z.int().nonnegative(),
  /** Why the reading is not yet steady, in words; null: it is, or nothing is being taken. */
  unsteadyBecause: z.string().nullable(),
  waitedS: finite.nonnegative(),
  /** How much of the averaging, or of the holding, is done, 0 to 1. */
  averagedShare: finite.min(0).max(1),
  /** Force by the running fit minus force of the current position, N. */
  residualN: finite.nullable(),
})
export type LiveReading = z.infer<typeof liveReading>

/** All that a screen shows of the guided routine; sent whole whenever any of it changes. */
export const routineState = z.strictObject({
  phase: routinePhase,
  plan: calibrationPlan.nullable(),
  gMPerS2: positive.nullable(),
  readingUnit: readingUnit.nullable(),
  preloadsDone: z.int().nonnegative(),
  positions: z.array(routinePosition),
  /** Index of the position at hand; null in planning, preloading and review. */
  current: z.int().nonnegative().nullable(),
  readings: z.array(routineReading),
  live: liveReading,
  /** What the last reading or step ran into; the readings so far are kept. */
  problem: troubleMessage.nullable(),
  /** The reading falls while the force rises: offer to invert. */
  reversed: z.boolean(),
  invertedAccepted: z.boolean(),
  /**
   * Half the range of the single readings at the first zero, or one count if that is more; ISO 7500-1 takes it as the
   * resolution where the readings fluctuate (from memory). Null before the first zero.
   */
  suggestedResolution: finite.nullable(),
})
export type RoutineState = z.infer<typeof routineState>

/** How the readings are to be judged. */
export const assessmentChoices = z.strictObject({
  /** null: the degree that is proposed. */
  degree: z
    .union([z.literal(1), z.literal(2), z.literal(3)])
    .nullable()
    .default(null),
  throughZero: z.boolean().default(false),
  fitOver: z.enum(['all', 'up']).default('up'),
  invertedAccepted: z.boolean().default(false),
  /** In the unit of the reading; null: that of the plan. */
  resolution: positive.nullable().default(null),
})
export type AssessmentChoices = z.infer<typeof assessmentChoices>

/** A routine that was broken off or cut short: its readings are kept, and no calibration came of it. */
export const brokenOffRoutine = z.strictObject({
  routineId: z.int().positive(),
  begunAt: isoInstant,
  by: z.string(),
  source: z.string(),
  plan: calibrationPlan,
  /** Null: the program ended while it ran. */
  endedAt: isoInstant.nullable(),
  reason: z.string(),
  readings: z.array(calibrationReading),
})
export type BrokenOffRoutine = z.infer<typeof brokenOffRoutine>

/** Readings of the routine judged as chosen, with the rows that entered. */
export const routineAssessment = z.strictObject({
  rows: z.array(calibrationRow),
  creep: z.array(creepResult),
  assessment: calibrationAssessment,
})
export type RoutineAssessment = z.infer<typeof routineAssessment>
