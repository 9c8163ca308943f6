import * as z from 'zod'
import { finite, id, isoDate, isoInstant, kept, note, positive, words } from '../values.ts'

/** What the person knows of one block pair. Lengths in mm, area in mm2. */
export const specimenFields = z.strictObject({
  /** The specimen's own number as written on the block, e.g. "C1-LL-03". Unique in the archive. */
  number: words.min(1),
  adhesive: words.min(1),
  lot: words.default(''),
  wood: words.default(''),
  /** The piece of wood that it was cut from. */
  board: words.default(''),
  jointType: words.default(''),
  exposure: words.default(''),
  /** 0 for a tight joint; null: not measured. */
  bondLineGapMm: finite.nonnegative().nullable().default(null),
  overlapLengthMm: positive.nullable().default(null),
  overlapWidthMm: positive.nullable().default(null),
  /** Bonded area; null: unknown, and then there is no strength. */
  areaMm2: positive.nullable().default(null),
  gluedOn: isoDate.nullable().default(null),
  place: words.default(''),
  notes: note.default(''),
  /** Invented data of the demo study. */
  demo: z.boolean().default(false),
})
export type SpecimenFields = z.infer<typeof specimenFields>

/** One version of a specimen's fields; the newest is in force, the older ones stay. */
export const specimen = z.strictObject({
  specimenId: id,
  revision: z.int().positive(),
  recordedAt: isoInstant,
  by: kept,
  reason: kept,
  fields: specimenFields,
})
export type Specimen = z.infer<typeof specimen>
