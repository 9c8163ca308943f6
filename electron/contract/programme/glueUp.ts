import * as z from 'zod'
import { finite, id, isoDate, isoInstant, kept, note, percent, positive, words } from '../values.ts'

const known = finite.nonnegative().nullable().default(null)

/** What is known of a session in which a batch was bonded. */
export const glueUpFields = z.strictObject({
  gluedOn: isoDate,
  temperatureC: finite.min(-50).max(100).nullable().default(null),
  humidityPercent: percent.nullable().default(null),
  /** Which lot of each adhesive was used. */
  lots: z
    .array(z.strictObject({ adhesive: words.min(1), lot: words.min(1) }))
    .max(200)
    .default([]),
  spreadGPerM2: known,
  openTimeMin: known,
  clampTimeMin: known,
  pressureMPa: known,
  woodMoisturePercent: positive.nullable().default(null),
  people: words.default(''),
  notes: note.default(''),
})
export type GlueUpFields = z.infer<typeof glueUpFields>

/** A glue-up session. */
export const glueUp = z.strictObject({
  glueUpId: id,
  recordedAt: isoInstant,
  by: kept,
  /** null: blocks of no study. */
  studyId: id.nullable(),
  fields: glueUpFields,
})
export type GlueUp = z.infer<typeof glueUp>

/** What a glue-up truly was, where something of it was entered wrongly; the newest of a glue-up is in force. */
export const glueUpCorrection = z.strictObject({
  glueUpCorrectionId: id,
  recordedAt: isoInstant,
  by: kept,
  reason: kept,
  glueUpId: id,
  fields: glueUpFields,
})
export type GlueUpCorrection = z.infer<typeof glueUpCorrection>

/** A planned block that was glued, and the specimen that it is since. */
export const gluedBlock = z.strictObject({
  gluedBlockId: id,
  recordedAt: isoInstant,
  glueUpId: id,
  /** null: a block of no study. */
  blockId: id.nullable(),
  specimenId: id,
})
export type GluedBlock = z.infer<typeof gluedBlock>
