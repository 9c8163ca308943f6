import * as z from 'zod'
import { deed, question } from '../procedure.ts'
import { signature } from '../signature.ts'
import { id, kept, nothing, words } from '../values.ts'
import { catalogueDecision, catalogueEntry, catalogueFields, catalogueKind } from './catalogue.ts'

/** An entry as it stands, with the number of the one that it counts as: its own where it was not merged. */
export const catalogueChoice = z.strictObject({ entryId: id, fields: catalogueFields, intoEntryId: id })
export type CatalogueChoice = z.infer<typeof catalogueChoice>

/** The same with what uses it. */
export const catalogueRow = z.strictObject({
  ...catalogueChoice.shape,
  /** How many specimens name it, under any of its names; null: specimens do not name things of this kind. */
  specimens: z.int().nonnegative().nullable(),
})
export type CatalogueRow = z.infer<typeof catalogueRow>

/** Two entries that may be one thing. case: names that differ by spaces, hyphens and the like alone. letter: by one letter. */
export const likeNames = z.strictObject({
  entryId: id,
  otherId: id,
  differ: z.enum(['case', 'letter']),
})
export type LikeNames = z.infer<typeof likeNames>

const named = z.strictObject({ entryId: id, name: kept })

/** An entry with all its history, and what names it. */
export const catalogueRecord = z.strictObject({
  ...catalogueRow.shape,
  /** Newest last. */
  versions: z.array(catalogueEntry),
  /** Every decision that it is a part of, newest last. */
  decisions: z.array(catalogueDecision),
  /** Names of all entries that the decisions speak of. */
  names: z.array(named),
  /** What was merged into it, directly or through another. */
  merged: z.array(named),
  studies: z.array(z.strictObject({ studyId: id, title: kept })),
  /** Files of loggers that hung in the place or exposure, each name once, the newest first. */
  loggerFiles: z.array(kept),
  /** Lots of the adhesive, boards of the wood. */
  parts: z.array(named),
})
export type CatalogueRecord = z.infer<typeof catalogueRecord>

const merge = z.strictObject({ fromEntryId: id, intoEntryId: id })

/** What becomes one where one entry is merged into another. */
export const mergePreview = z.strictObject({
  ...merge.shape,
  /** How many specimens name the one and the other now. */
  fromSpecimens: z.int().nonnegative().nullable(),
  intoSpecimens: z.int().nonnegative().nullable(),
  /** Groups, whatever the age, that are two now and become one, and how many specimens each of the two has. */
  groups: z.array(
    z.strictObject({
      adhesive: kept,
      jointType: kept,
      bondLineGapMm: z.number().nullable(),
      exposure: kept,
      fromSpecimens: z.int().positive(),
      intoSpecimens: z.int().positive(),
    }),
  ),
})
export type MergePreview = z.infer<typeof mergePreview>

const entryId = z.strictObject({ entryId: id })

/** The catalogue: what adhesives, lots, woods, boards, joint types, exposures, people and places there are. */
export const catalogueProcedures = {
  /** What can be chosen where a thing of this kind is named: entries that were merged into no other, in order of name. */
  'catalogue.choices': question({
    input: z.strictObject({ kind: catalogueKind }),
    output: z.array(catalogueChoice),
    reads: () => ['catalogue'],
  }),
  'catalogue.list': question({
    input: z.strictObject({ kind: catalogueKind }),
    output: z.strictObject({ rows: z.array(catalogueRow), alike: z.array(likeNames) }),
    reads: () => ['catalogue', 'specimens'],
  }),
  /** How many entries there are of each kind, merged ones not counted, and how many pairs that may be one thing. */
  'catalogue.counts': question({
    input: nothing,
    output: z.array(
      z.strictObject({ kind: catalogueKind, entries: z.int().nonnegative(), alike: z.int().nonnegative() }),
    ),
    reads: () => ['catalogue'],
  }),
  'catalogue.get': question({
    input: entryId,
    output: catalogueRecord,
    reads: () => ['catalogue', 'specimens', 'studies', 'climate'],
  }),
  'catalogue.previewMerge': question({
    input: merge,
    output: mergePreview,
    reads: () => ['catalogue', 'specimens'],
  }),
  'catalogue.add': deed({ input: z.strictObject({ fields: catalogueFields, by: words }), output: catalogueEntry }),
  'catalogue.correct': deed({
    input: z.strictObject({ ...entryId.shape, fields: catalogueFields, ...signature.shape }),
    output: catalogueEntry,
  }),
  'catalogue.merge': deed({ input: z.strictObject({ ...merge.shape, ...signature.shape }), output: nothing }),
  'catalogue.takeBackMerge': deed({ input: z.strictObject({ ...entryId.shape, ...signature.shape }), output: nothing }),
}
