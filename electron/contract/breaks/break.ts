import * as z from 'zod'
import { captureSession } from '../bench/session.ts'
import { verification } from '../calibration/verification.ts'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { finite, id, isoDate, isoInstant, percent } from '../values.ts'
import { assessment, failurePattern } from './assessment.ts'
import { breakEnd, breakHeader, ending } from './capture.ts'
import { decision, overruledPeak, setAsideCause } from './decision.ts'
import { evaluation, flag, outcome } from './evaluation.ts'

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
  /** How many results count for its specimen, itself among them; 0 where it counts for none. */
  resultsOfSpecimen: z.int().nonnegative(),
  /** Of a specimen of the demo study. */
  demo: z.boolean(),
  /** Its samples were invented by the virtual amplifier, whosever specimen it is. */
  simulated: z.boolean(),
})
export type BreakSummary = z.infer<typeof breakSummary>

/** What is known of the block of a break, under the names that the catalogue has now; '' where nothing was written. */
const blockOfBreak = z.strictObject({
  lot: z.string(),
  wood: z.string(),
  board: z.string(),
  place: z.string(),
  bondLineGapMm: finite.nullable(),
  gluedOn: isoDate.nullable(),
  /** On the day of this break; null: the day of the glue-up is not known. */
  ageMonths: finite.nullable(),
  /** The title of its study. */
  study: z.string().nullable(),
})
export type BlockOfBreak = z.infer<typeof blockOfBreak>

/** A break as the list of breaks shows it. `block` null: it is of no specimen. */
export const breakRow = z.strictObject({ ...breakSummary.shape, block: blockOfBreak.nullable() })
export type BreakRow = z.infer<typeof breakRow>

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
  unreadable: unreadableRecords,
})
export type BreakRecord = z.infer<typeof breakRecord>
