import * as z from 'zod'
import { finite, positive } from '../values.ts'
import { calibrationNote, degreeReason } from './calibrationNotes.ts'
import { uncertaintyBudget } from './uncertainty.ts'

/** Class in the manner of ISO 7500-1; `none` where no class is reached or none can be told. */
export const accuracyClass = z.enum(['0.5', '1', '2', '3', 'none'])
export type AccuracyClass = z.infer<typeof accuracyClass>

/** Errors of one step, percent of its force (f0: percent of the highest force); null where the data cannot give it. */
export const calibrationStep = z.strictObject({
  forceN: positive,
  /** Relative accuracy error. */
  q: finite.nullable(),
  /** Repeatability. */
  b: finite.nullable(),
  /** Reversibility. */
  v: finite.nullable(),
  /** Zero error. */
  f0: finite.nullable(),
  /** Relative resolution. */
  a: finite.nullable(),
  class: accuracyClass,
})
export type CalibrationStep = z.infer<typeof calibrationStep>

/** What `calibrate --json` prints: force in N = b0 + b1 reading + b2 reading^2 + ... */
export const calibrationResult = z.strictObject({
  degree: z.int().min(1).max(3),
  /** Index is the power of the reading. A line through zero has b0 = 0, with standard error 0: it is set, not found. */
  coefficients: z.array(finite).min(2),
  coefficientSE: z.array(finite.nullable()).min(2),
  residualSD: finite.nullable(),
  rSquared: finite,
  readings: z.int().positive(),
  /** null where the resolution leaves no verified range. */
  verifiedRangeN: z.tuple([finite, finite]).nullable(),
  steps: z.array(calibrationStep),
  class: accuracyClass,
  /** Largest expanded uncertainty (k = 2) in the verified range, percent of the force. */
  expandedUncertaintyPercent: finite.nullable(),
})

export const lackOfFitTest = z.strictObject({
  f: finite.nonnegative(),
  lackDegreesOfFreedom: z.int().positive(),
  pureDegreesOfFreedom: z.int().positive(),
  pureErrorSD: finite.nonnegative(),
  pValue: finite.min(0).max(1),
})
export type LackOfFitTest = z.infer<typeof lackOfFitTest>

/** Which degree the program proposes and why, with the test of every degree that was tried. Older records hold a sentence. */
export const degreeProposal = z.strictObject({
  degree: z.int().min(1).max(3),
  reason: z.union([z.string(), degreeReason]),
  tried: z.array(z.strictObject({ degree: z.int().min(1).max(3), lackOfFit: lackOfFitTest.nullable() })),
})
export type DegreeProposal = z.infer<typeof degreeProposal>

/** The range over which every step reaches a class. */
export const classRange = z.strictObject({
  class: accuracyClass.exclude(['none']),
  fromN: positive,
  toN: positive,
})
export type ClassRange = z.infer<typeof classRange>

/** How an empty cell, or one under a load that stays, goes on moving; percent of the load. Readings in the unit of the device. */
export const creepResult = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('creep'),
    run: z.int().positive(),
    loadN: positive,
    fromReading: finite,
    toReading: finite,
    percent: finite,
    /** Counted from the moment at which the person said that the load hangs, s. */
    fromS: positive,
    toS: positive,
  }),
  z.strictObject({
    kind: z.literal('zero-return'),
    run: z.int().positive(),
    /** The highest force of the run. */
    loadN: positive,
    /** The zero before the run, and the one after it. */
    fromReading: finite,
    toReading: finite,
    percent: finite,
  }),
])
export type CreepResult = z.infer<typeof creepResult>

/** All that a fit says, derived again at any time from the readings in use. */
export const calibrationAssessment = z.strictObject({
  method: z.string(),
  result: calibrationResult,
  fitOver: z.enum(['all', 'up']),
  throughZero: z.boolean(),
  proposal: degreeProposal,
  lackOfFit: lackOfFitTest.nullable(),
  /** Force found minus force applied, N, beside each row in order. */
  residualsN: z.array(finite),
  /** Force of each row by the fit, N. */
  indicatedN: z.array(finite),
  budget: uncertaintyBudget.nullable(),
  classRanges: z.array(classRange),
  /** What limits the word of this calibration, most serious first; older records hold sentences. */
  notes: z.array(z.union([z.string(), calibrationNote])),
})
export type CalibrationAssessment = z.infer<typeof calibrationAssessment>
