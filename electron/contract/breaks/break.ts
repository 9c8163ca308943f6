import * as z from 'zod'
import { verification } from '../calibration/calibrationUse.ts'
import { finite, forceScale, id, isoInstant, percent, readingUnit, tare } from '../calibration/force.ts'
import { specimen } from '../specimens/specimen.ts'
import { detectionSettings } from './detection.ts'
import { evaluation, flag, outcome } from './evaluation.ts'

/** The circumstances of one connection to one device. */
export const captureSession = z.strictObject({
  sessionId: id,
  startedAt: isoInstant,
  /** Where the samples come from: a port path, or "virtual amplifier: brittle". */
  source: z.string(),
  lineFormat: z.string(),
  program: z.string(),
})
export type CaptureSession = z.infer<typeof captureSession>

/** What is known when a capture begins. Written before its first sample. */
export const breakHeader = z.strictObject({
  breakId: id,
  sessionId: id,
  specimenId: id.nullable(),
  startedAt: isoInstant,
  readingUnit,
  scale: forceScale,
  tare: tare.nullable(),
  settings: detectionSettings,
})
export type BreakHeader = z.infer<typeof breakHeader>

/** complete: ended by the detector. interrupted: the device went away. recovered: the program ended while it ran. */
export const ending = z.enum(['complete', 'interrupted', 'recovered'])
export type Ending = z.infer<typeof ending>

export const breakEnd = z.strictObject({
  breakId: id,
  endedAt: isoInstant,
  ending,
  samples: z.int().nonnegative(),
  missingSamples: z.int().nonnegative(),
  /** SHA-256, hex, over times and readings as FORMAT.md states. */
  curveSha256: z.string().regex(/^[0-9a-f]{64}$/),
})
export type BreakEnd = z.infer<typeof breakEnd>

/** EN ISO 10365 designations; the letters are common practice, no source read. */
export const failurePattern = z.enum(['SF', 'CSF', 'DF', 'CF', 'SCF', 'AF', 'ACFP'])
export type FailurePattern = z.infer<typeof failurePattern>

/** What the broken faces look like. A newer assessment stands in force before an older one; none is removed. */
export const assessment = z.strictObject({
  assessmentId: id,
  breakId: id,
  recordedAt: isoInstant,
  by: z.string(),
  /** Percent of the bonded area that failed in the wood, nearest 5 %; null: not assessed. */
  woodFailurePercent: percent.multipleOf(5).nullable(),
  failurePattern: failurePattern.nullable(),
  note: z.string().max(4000),
})
export type Assessment = z.infer<typeof assessment>

/** Why a break is set aside. */
export const setAsideCause = z.enum(['specimen-slipped', 'wrong-block', 'fixture-touched', 'other'])
export type SetAsideCause = z.infer<typeof setAsideCause>

/** A sample of the raw curve: its time, s, and its reading in the header's unit, so that any scale gives its force. */
export const pickedSample = z.strictObject({ timeS: finite, reading: finite })
export type PickedSample = z.infer<typeof pickedSample>

/**
 * A person's word on a break: set aside (not used in results), taken back in, moved to another specimen; the peak picked
 * by hand, the load of an early drop declared the failure, or the peak again as it was found. The newest of those that
 * speak of the same thing decides.
 */
export const decision = z.strictObject({
  decisionId: id,
  breakId: id,
  recordedAt: isoInstant,
  by: z.string().min(1),
  reason: z.string().min(1),
  kind: z.enum(['set-aside', 'taken-back', 'reassigned', 'peak-picked', 'premature-failure', 'peak-as-found']),
  specimenId: id.nullable(),
  /** set-aside: what happened; null: it was not asked then. */
  cause: setAsideCause.nullable().default(null),
  /** peak-picked and premature-failure: the sample that stands for the failure load. */
  sample: pickedSample.nullable().default(null),
})
export type Decision = z.infer<typeof decision>
/** A decision before the archive has numbered it; what it does not have may be left out. */
export type NewDecision = Omit<z.input<typeof decision>, 'decisionId'>

/** A person's word in place of the peak found, by the scale in force. */
export const overruledPeak = z.strictObject({
  kind: z.enum(['peak-picked', 'premature-failure']),
  by: z.string(),
  reason: z.string(),
  recordedAt: isoInstant,
  timeS: finite,
  /** The peak that the evaluation in force found, N. */
  foundPeakN: finite.nullable(),
})
export type OverruledPeak = z.infer<typeof overruledPeak>

/** One line of the list of breaks: the break with the newest of everything that stands beside it. */
export const breakSummary = z.strictObject({
  breakId: id,
  startedAt: isoInstant,
  /** null while the capture runs. */
  ending: ending.nullable(),
  specimenId: id.nullable(),
  number: z.string().nullable(),
  adhesive: z.string().nullable(),
  jointType: z.string().nullable(),
  exposure: z.string().nullable(),
  areaMm2: finite.nullable(),
  outcome: outcome.nullable(),
  /** The load that counts: as found, or as a person said (then `overruled` says who and why). */
  peakN: finite.nullable(),
  overruled: overruledPeak.nullable(),
  /** That load over the bonded area, of a break alone: an unloading has a load but no strength. */
  strengthMPa: finite.nullable(),
  samplingBoundPercent: finite.nullable(),
  flags: z.array(flag),
  scaleKind: z.enum(['none', 'uncalibrated-scale', 'device-unit', 'calibration']),
  /** The peak against the calibration that it was found with; null where there is none. */
  verification: verification.nullable(),
  woodFailurePercent: percent.nullable(),
  failurePattern: failurePattern.nullable(),
  note: z.string(),
  setAside: z.string().nullable(),
  setAsideCause: setAsideCause.nullable(),
  demo: z.boolean(),
})
export type BreakSummary = z.infer<typeof breakSummary>

/** One line of the list of specimens: the newest revision, with its break in force if it has one. */
export const specimenSummary = z.strictObject({
  ...specimen.shape,
  /** The newest break that counts: an outcome of break, not set aside. */
  breakInForce: breakSummary.nullable(),
})
export type SpecimenSummary = z.infer<typeof specimenSummary>

/** A break with all that was ever recorded of it, newest last. */
export const breakRecord = z.strictObject({
  summary: breakSummary,
  header: breakHeader,
  end: breakEnd.nullable(),
  session: captureSession,
  evaluations: z.array(evaluation),
  /** Which of them counts; not always the newest. null: none yet. */
  inForceId: id.nullable(),
  /** The peak of each evaluation that was made under a calibration, against it. */
  verifications: z.array(z.strictObject({ evaluationId: id, ...verification.shape })),
  assessments: z.array(assessment),
  decisions: z.array(decision),
})
export type BreakRecord = z.infer<typeof breakRecord>

/** A specimen with every revision (newest last) and every break made of it (newest last). */
export const specimenRecord = z.strictObject({
  current: specimenSummary,
  revisions: z.array(specimen),
  breaks: z.array(breakSummary),
})
export type SpecimenRecord = z.infer<typeof specimenRecord>

const samples = z.instanceof(Float64Array)

/** Raw samples: seconds since the capture's first sample rise strictly; readings in the header's unit, before scale and tare. */
export const rawCurve = z.strictObject({ timeS: samples, readings: samples })
export type RawCurve = z.infer<typeof rawCurve>

/** A curve to draw: force in N after tare (readings where there is no scale), thinned by minimum and maximum if asked. */
export const forceCurve = z.strictObject({
  timeS: samples,
  force: samples,
  unit: z.enum(['N', 'counts']),
  samples: z.int(),
})
export type ForceCurve = z.infer<typeof forceCurve>

/** Raw samples on their way to the archive: whole microseconds since the capture's first sample, rising strictly; readings as received. */
export const sampleBlock = z.strictObject({ timeUs: samples, readings: samples })
export type SampleBlock = z.infer<typeof sampleBlock>
