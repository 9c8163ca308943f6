import * as z from 'zod'
import { troubleMessage } from '../errors.ts'
import { calibrationReading, gravityChoice, loadDirection, oimlClass, weightMaterial } from './calibration.ts'
import { finite, isoInstant, positive, readingUnit } from './force.ts'

/** A weight as the person types it. Masses and densities are judged with a sentence of their own, so any number may come in. */
export const weightEntry = z.strictObject({
  name: z.string().trim().min(1).max(200),
  nominalKg: finite,
  conventionalMassKg: finite.nullable().default(null),
  tolerance: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('oiml'), class: oimlClass }),
    z.strictObject({ kind: z.literal('own'), halfWidthKg: finite }),
  ]),
  density: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('material'), material: weightMaterial }),
    z.strictObject({ kind: z.literal('typed'), kgPerM3: finite }),
  ]),
})
export type WeightEntry = z.infer<typeof weightEntry>

/** The weights of the shop as they were saved last; none were saved when savedAt is null. */
export const keptWeights = z.strictObject({
  weights: z.array(weightEntry),
  savedAt: isoInstant.nullable(),
  by: z.string(),
})
export type KeptWeights = z.infer<typeof keptWeights>

/** Gravity, air and lever: what turns a weight into a force. */
export const loadingConditions = z.strictObject({
  gravity: gravityChoice,
  airDensityKgPerM3: finite.default(1.2),
  /** Force on the cell over weight force; 1: the weights hang on the cell itself. */
  leverRatio: finite.default(1),
  leverHalfWidthPercent: finite.default(0),
})
export type LoadingConditionsEntry = z.infer<typeof loadingConditions>

/** What is going to be done: which weights, in which steps, how often, and how long each reading is averaged. */
export const calibrationPlan = z.strictObject({
  weights: z.array(weightEntry),
  /** Stacks by the names of their weights, increasing. Zero is not among them: it is read before and after each run. */
  steps: z.array(z.array(z.string().trim()).min(1)).min(1).max(40),
  runs: z.int().min(1).max(10).default(3),
  /** Each run goes down again through the same steps. */
  decreasing: z.boolean().default(false),
  preloads: z.int().min(0).max(10).default(3),
  conditions: loadingConditions,
  /** Null: the capacity that the bench knows. */
  capacityN: positive.nullable().default(null),
  /** Resolution of the reading in its own unit; null: not known. */
  resolution: positive.nullable().default(null),
  temperatureStartC: finite.nullable().default(null),
  temperatureNote: z.string().max(4000).default(''),
  /** Readings are averaged over so many seconds once they are steady. */
  averageS: finite.min(0.5).max(60).default(2),
  /** A reading that has not become steady after so many seconds is given up. */
  steadyWithinS: finite.min(2).max(600).default(60),
  /** The highest load of the last run is left on so long, s, and read at 30 s and at the end; null: creep is not measured. */
  creepHoldS: finite.min(60).max(600).nullable().default(null),
})
export type CalibrationPlan = z.infer<typeof calibrationPlan>

/** A plan in newtons. Shares are half-widths of what is believed, over the force. */
export const plannedForces = z.strictObject({
  gMPerS2: positive,
  gravityShare: finite.nonnegative(),
  capacityN: positive.nullable(),
  steps: z.array(
    z.strictObject({
      weights: z.array(z.string()),
      massKg: positive,
      forceN: positive,
      weightsShare: finite.nonnegative(),
      buoyancyShare: finite.nonnegative(),
    }),
  ),
})
export type PlannedForces = z.infer<typeof plannedForces>

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
