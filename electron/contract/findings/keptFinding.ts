import * as z from 'zod'
import { finite, id, isoInstant, kept, note, positive, words } from '../values.ts'
import { woodFailureTreatment } from './options.ts'

/** What is asked of the results. */
export const askedQuestion = z.enum(['strongest', 'overall', 'changed', 'as-good', 'torn-wood', 'next'])
export type AskedQuestion = z.infer<typeof askedQuestion>

/** A joint type, gap and exposure in which adhesives are held against the reference, with the weight that it has. */
export const weighedCondition = z.strictObject({
  jointType: note,
  bondLineGapMm: finite.nullable(),
  exposure: note,
  weight: finite.nonnegative(),
})
export type WeighedCondition = z.infer<typeof weighedCondition>

/** Standing across conditions: beside which adhesive, of which adhesives, in which conditions. */
export const overallSettings = z.strictObject({
  /** Empty: none is chosen. */
  reference: note.default(''),
  /** null: all. */
  adhesives: z.array(note).max(1000).nullable().default(null),
  /** null: all that have blocks, each with weight 1. */
  conditions: z.array(weighedCondition).max(1000).nullable().default(null),
})
export type OverallSettings = z.infer<typeof overallSettings>

/** A question as it is typed and chosen on the page. */
export const findingsSettings = z.strictObject({
  asked: askedQuestion.default('strongest'),
  woodFailure: woodFailureTreatment.default('observed'),
  /** The study whose blocks are looked at; null: all blocks. */
  studyId: id.nullable().default(null),
  /** Empty: all. */
  adhesive: note.default(''),
  exposure: note.default(''),
  jointType: note.default(''),
  /** Bond line gap in mm, or "null" for blocks whose gap nobody measured. */
  bondLineGapMm: note.default(''),
  ageMonths: note.default(''),
  /** Key of the group that others are held against; empty: none. */
  reference: note.default(''),
  /** Margin of equivalence, percent. */
  marginPercent: note.default('10'),
  /** A block with at least so much torn wood is a wood failure, percent. */
  limitPercent: note.default('75'),
  /** By how much torn wood raises a strength under "adjusted". */
  adjustFactor: note.default('1'),
  /** Below which share of the first strength, percent, and at which age, years; an age left empty: the end of the programme. */
  sharePercent: note.default('80'),
  atYears: note.default(''),
  /** The change of a series that is to be seen, percent a year. */
  changePercent: note.default('1'),
  /** The adhesive that the others are held against; empty: that of the study. */
  referenceAdhesive: note.default(''),
  overall: overallSettings.prefault({}),
})
export type FindingsSettings = z.infer<typeof findingsSettings>

/**
 * What a finding knows of a result that it rests on. Its hash is over these keys, which therefore stay as they are, whatever else
 * findings come to know of a block.
 */
export const keptBlock = z.strictObject({
  specimenId: id,
  /** null: there is no curve, only a peak. */
  breakId: id.nullable(),
  number: kept,
  group: kept,
  ageMonths: finite.nullable(),
  strengthMPa: positive,
  woodFailurePercent: finite.nullable(),
  excludedBecause: kept.nullable(),
})
export type KeptBlock = z.infer<typeof keptBlock>

const sha256 = z.string().regex(/^[0-9a-f]{64}$/)

/** What is kept of a finding. */
export const keptFindingFields = z.strictObject({
  name: words.min(1),
  /** false: a person took it off the list. */
  listed: z.boolean(),
  settings: findingsSettings,
  /** The answer as it stood then, a sentence each. */
  said: z.array(note).max(1000),
  /** SHA-256 of the canonical JSON of `blocks`. */
  dataSha256: sha256,
  blocks: z.array(keptBlock),
})
export type KeptFindingFields = z.infer<typeof keptFindingFields>

/** One version of a finding that was kept under a name. */
export const keptFinding = z.strictObject({
  keptFindingId: id,
  revision: z.int().positive(),
  recordedAt: isoInstant,
  by: kept,
  reason: kept,
  fields: keptFindingFields,
})
export type KeptFinding = z.infer<typeof keptFinding>

/** A finding in the list as it was kept: all but its blocks, of which their number. */
export const keptFindingHead = z.strictObject({
  ...keptFinding.omit({ fields: true }).shape,
  ...keptFindingFields.omit({ blocks: true, listed: true }).shape,
  blocks: z.int().nonnegative(),
})
export type KeptFindingHead = z.infer<typeof keptFindingHead>

/** The same, and whether anything came, went or changed of what it rests on; what did is asked of one finding at a time. */
export const keptFindingRow = z.strictObject({ ...keptFindingHead.shape, isStale: z.boolean() })
export type KeptFindingRow = z.infer<typeof keptFindingRow>

/** What changed since a finding was kept. */
export const findingChanges = z.strictObject({
  came: z.array(keptBlock),
  went: z.array(keptBlock),
  changed: z.array(z.strictObject({ before: keptBlock, now: keptBlock })),
})
export type FindingChanges = z.infer<typeof findingChanges>
