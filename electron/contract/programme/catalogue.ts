import * as z from 'zod'
import { finite, id, isoDate, isoInstant, kept, note, percent, positive, words } from '../values.ts'

export const catalogueKind = z.enum(['adhesive', 'lot', 'wood', 'board', 'joint-type', 'exposure', 'operator', 'place'])
export type CatalogueKind = z.infer<typeof catalogueKind>

const name = words.min(1)
const known = finite.nonnegative().nullable().default(null)
const shared = { name, notes: note.default('') }

const wood = {
  densityKgPerM3: known,
  moisturePercent: known,
  /** Angle between the growth rings and the glued face, degrees; 0: the rings lie flat. */
  ringAngleDeg: finite.min(0).max(90).nullable().default(null),
}

/** What the catalogue knows of one thing that specimens and studies name. */
export const catalogueFields = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('adhesive'),
    ...shared,
    adhesiveClass: words.default(''),
    maker: words.default(''),
    /** How it is mixed, as the person says it: "2 : 1 by weight". */
    mix: words.default(''),
    openTimeMin: known,
    clampTimeMin: known,
    safetyNote: note.default(''),
  }),
  z.strictObject({
    kind: z.literal('lot'),
    ...shared,
    /** The adhesive that it is a lot of, by name. */
    adhesive: name,
    openedOn: isoDate.nullable().default(null),
    expiresOn: isoDate.nullable().default(null),
    bottle: words.default(''),
  }),
  z.strictObject({ kind: z.literal('wood'), ...shared, species: words.default(''), ...wood }),
  z.strictObject({ kind: z.literal('board'), ...shared, wood: words.default(''), ...wood }),
  z.strictObject({
    kind: z.literal('joint-type'),
    ...shared,
    overlapLengthMm: positive.nullable().default(null),
    overlapWidthMm: positive.nullable().default(null),
    areaMm2: positive.nullable().default(null),
  }),
  z.strictObject({ kind: z.literal('exposure'), ...shared }),
  z.strictObject({ kind: z.literal('operator'), ...shared }),
  z.strictObject({
    kind: z.literal('place'),
    ...shared,
    /** How many blocks it holds; null: nobody counted. */
    capacityBlocks: z.int().positive().nullable().default(null),
    temperatureC: finite.nullable().default(null),
    humidityPercent: percent.nullable().default(null),
  }),
])
export type CatalogueFields = z.infer<typeof catalogueFields>

/** One version of an entry; the newest is in force, and every name that it ever had goes on naming it. */
export const catalogueEntry = z.strictObject({
  entryId: id,
  revision: z.int().positive(),
  recordedAt: isoInstant,
  by: kept,
  reason: kept,
  fields: catalogueFields,
})
export type CatalogueEntry = z.infer<typeof catalogueEntry>

/** A person's word that two entries are one thing, or that they are not after all. */
export const catalogueDecision = z.strictObject({
  catalogueDecisionId: id,
  recordedAt: isoInstant,
  by: kept,
  reason: kept,
  kind: z.enum(['merged', 'taken-back']),
  fromEntryId: id,
  intoEntryId: id,
})
export type CatalogueDecision = z.infer<typeof catalogueDecision>
