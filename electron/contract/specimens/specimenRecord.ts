import * as z from 'zod'
import { breakSummary } from '../breaks/break.ts'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { ageMonths } from '../programme/study.ts'
import { finite, id, isoDate, kept } from '../values.ts'
import { specimen } from './specimen.ts'
import { typedResultSummary } from './typedResult.ts'

/** What a specimen is made of and where it lies, under the names that the catalogue has for it now; '' where nothing was written. */
const named = z.strictObject({
  adhesive: kept,
  lot: kept,
  wood: kept,
  board: kept,
  jointType: kept,
  exposure: kept,
  place: kept,
})

/** One line of the list of specimens: the newest revision, with its break in force if it has one. */
export const specimenSummary = z.strictObject({
  ...specimen.shape,
  named,
  /** The title of the study that it belongs to; null: none. */
  study: kept.nullable(),
  /** Its age at the result that counts, or that of its pull where it has none; null: not known. */
  ageMonths: finite.nullable(),
  /** The newest break that counts: an outcome of break, not set aside. */
  breakInForce: breakSummary.nullable(),
  /** Where no break counts: the newest result without a curve that is not set aside. */
  typedResultInForce: typedResultSummary.nullable(),
  /** Why it was withdrawn; null: it was not, or was taken back. */
  withdrawn: kept.nullable(),
  /** How many of its breaks count; more than one is one too many. */
  results: z.int().nonnegative(),
  /**
   * How often it broke, breaks that were set aside included: whatever was wrong with them, it lies in two pieces. Results without
   * a curve count until they are set aside.
   */
  timesBroken: z.int().nonnegative(),
})
export type SpecimenSummary = z.infer<typeof specimenSummary>

/** The glue-up that made a specimen, and the place that it has in a study; `ageMonths` null: it is a spare, or of no study. */
const placeInStudy = z.strictObject({
  glueUpId: id,
  gluedOn: isoDate,
  studyId: id.nullable(),
  studyTitle: kept.nullable(),
  ageMonths: ageMonths.nullable(),
})
export type PlaceInStudy = z.infer<typeof placeInStudy>

/** A specimen with every revision, every break made of it and every result without a curve, each newest last. */
export const specimenRecord = z.strictObject({
  current: specimenSummary,
  revisions: z.array(specimen),
  breaks: z.array(breakSummary),
  typedResults: z.array(typedResultSummary),
  /** null: it was entered by itself. */
  glued: placeInStudy.nullable(),
  unreadable: unreadableRecords,
})
export type SpecimenRecord = z.infer<typeof specimenRecord>
