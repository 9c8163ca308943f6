import * as z from 'zod'
import { finite, id, isoDate, isoInstant, kept, note, positive, words } from '../values.ts'

const name = words.min(1)
/** Whole months since glue-up; 0: as soon as the bond has cured. Nobody plans beyond a century. */
export const ageMonths = z.int().min(0).max(1200)

const distinct = <Item>(list: readonly Item[]) => new Set(list.map((one) => JSON.stringify(one))).size === list.length
const levels = <Item extends z.ZodType>(item: Item) =>
  z.array(item).min(1).max(200).refine(distinct, 'names one level twice')

/** Blocks that differ in nothing but their age. */
export const series = z.strictObject({
  adhesive: name,
  jointType: words,
  gapMm: finite.nonnegative(),
  exposure: words,
})
export type Series = z.infer<typeof series>

/** What a study asks, and of which blocks it is made. Lengths in mm, area in mm2. */
export const studyFields = z.strictObject({
  title: name,
  /** The question, in words. */
  question: note.default(''),
  adhesives: levels(name),
  jointTypes: levels(words),
  gapsMm: levels(finite.nonnegative()),
  exposures: levels(words),
  agesMonths: z
    .array(ageMonths)
    .min(1)
    .max(200)
    .refine((ages) => ages.every((age, i) => i === 0 || age > ages[i - 1]!), 'is out of order: ages rise'),
  /** Cells that are not made; `ageMonths` null: none of that series. */
  leftOut: z
    .array(z.strictObject({ ...series.shape, ageMonths: ageMonths.nullable() }))
    .max(10_000)
    .default([]),
  blocksPerCell: z.int().min(1).max(1000),
  sparesPerSeries: z.int().min(0).max(1000).default(0),
  referenceAdhesive: name.nullable().default(null),
  /** A pull may be this many days early or late. */
  windowDays: z.int().min(0).max(365).default(7),
  /** When the blocks are to be glued; null: not decided. */
  startOn: isoDate.nullable().default(null),
  overlapLengthMm: positive.nullable().default(null),
  overlapWidthMm: positive.nullable().default(null),
  areaMm2: positive.nullable().default(null),
  /** Each of the two pieces that are glued to a block. */
  pieceLengthMm: positive.nullable().default(null),
  pieceWidthMm: positive.nullable().default(null),
  pieceThicknessMm: positive.nullable().default(null),
  wood: words.default(''),
  /** The boards that blocks are cut from, and how many each gives; none: not allocated to boards. */
  boards: z
    .array(z.strictObject({ name, blocks: z.int().min(1).max(100_000) }))
    .max(1000)
    .refine((boards) => distinct(boards.map((board) => board.name)), 'names one board twice')
    .default([]),
  /** Spread of a group in percent of its mean, as the plan assumes it. */
  cvPercent: positive.max(1000).nullable().default(null),
  confidence: finite.gt(0.5).lt(1).default(0.95),
  power: finite.gt(0.05).lt(1).default(0.8),
  adhesiveGPerBlock: positive.nullable().default(null),
  /** What the random allocation and the random order of breaking begin from. */
  seed: z.int().nonnegative(),
  /** Invented data of the demo study. */
  demo: z.boolean().default(false),
})
export type StudyFields = z.infer<typeof studyFields>

/** One version of a study; the newest is in force, and what older ones had allocated stays. */
export const study = z.strictObject({
  studyId: id,
  revision: z.int().positive(),
  recordedAt: isoInstant,
  by: kept,
  reason: kept,
  fields: studyFields,
})
export type Study = z.infer<typeof study>

/** A planned block: its place in the study, its short number, its board, and when in its pull it is to be broken. */
export const block = z.strictObject({
  blockId: id,
  studyId: id,
  recordedAt: isoInstant,
  by: kept,
  /** Its short number without the check digit; no other block or label has it. */
  running: z.int().positive(),
  ...series.shape,
  /** null: a spare. */
  ageMonths: ageMonths.nullable(),
  board: kept,
  /** The blocks of a pull are broken in rising order of it. */
  breakingOrder: z.int().nonnegative(),
})
export type Block = z.infer<typeof block>

/** The short number of a specimen that is no block of a study. */
export const label = z.strictObject({
  running: z.int().positive(),
  specimenId: id,
  recordedAt: isoInstant,
  by: kept,
})
export type Label = z.infer<typeof label>
