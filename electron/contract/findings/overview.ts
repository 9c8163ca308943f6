import * as z from 'zod'
import { groupTraits } from '../breaks/breakGroup.ts'
import { deed, question } from '../procedure.ts'
import { finite, id, kept, samples, words } from '../values.ts'
import { findingsOptions, fittedDistribution } from './options.ts'

const some = <Item extends z.ZodType>(item: Item) => z.array(item).nullable().default(null)

/** Which blocks are looked at: those of a study, and by what they are; null: all. */
export const overviewFilter = z.strictObject({
  studyId: id.nullable().default(null),
  adhesives: some(words),
  jointTypes: some(words),
  bondLineGapsMm: some(finite.nullable()),
  exposures: some(words),
  agesMonths: some(finite.nullable()),
})
export type OverviewFilter = z.infer<typeof overviewFilter>

/**
 * What became of a block. `planned`: not glued yet; `waiting`: on the shelf; `lost`: withdrawn, or open without anything that
 * counts; `excluded`: broken, and set aside by a person; `peak-only`: its result has no curve; `curve`: it has one.
 */
export const blockStates = ['planned', 'waiting', 'lost', 'excluded', 'peak-only', 'curve'] as const
export type BlockState = (typeof blockStates)[number]

/** Beyond so many blocks only the first cells are answered. */
export const mostBlocks = 20_000

/** The blocks that differ in nothing; `ageMonths` null: a spare, or its age is not known. */
export const overviewCell = z.strictObject({
  ...groupTraits.shape,
  ageMonths: finite.nullable(),
  blocks: z.int().positive(),
})
export type OverviewCell = z.infer<typeof overviewCell>

/**
 * Every block: cells by adhesive, joint, gap, exposure and age, and for each block, cell after cell, one entry in every column. In a cell
 * those with a strength come first, weakest first.
 */
export const overview = z.strictObject({
  cells: z.array(overviewCell),
  numbers: z.array(kept),
  /** 0: not glued yet. */
  specimenIds: samples,
  /** 0: there is no curve. */
  breakIds: samples,
  /** Places in `blockStates`. */
  states: z.instanceof(Uint8Array),
  /** NaN: none. */
  strengthsMPa: samples,
  /** NaN: not assessed. */
  woodFailurePercents: samples,
  /** How many blocks fit, also where not all are answered. */
  blocks: z.int().nonnegative(),
  /** How many of the blocks answered nobody measured. */
  simulated: z.int().nonnegative(),
  /** What a filter may name: of all blocks of the study. */
  levels: z.strictObject({
    adhesives: z.array(kept),
    jointTypes: z.array(kept),
    bondLineGapsMm: z.array(finite.nullable()),
    exposures: z.array(kept),
    agesMonths: z.array(finite.nullable()),
  }),
})
export type Overview = z.infer<typeof overview>

/** How torn wood is treated in a mean; `distribution`: that is fitted where it is censored. */
export const meanTreatment = z.strictObject({
  ...findingsOptions.pick({ woodFailure: true, limitPercent: true, adjustFactor: true }).shape,
  distribution: fittedDistribution.default('normal'),
})
export type MeanTreatment = z.infer<typeof meanTreatment>

/** What is shown of the groups: every block, or their means under a treatment of torn wood, beside a reference adhesive (null: none). */
export const overviewView = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('blocks') }),
  z.strictObject({
    kind: z.literal('means'),
    treatment: meanTreatment,
    reference: words.min(1).nullable(),
  }),
])
export type OverviewView = z.infer<typeof overviewView>

/** Every block of a programme at once. */
export const overviewProcedures = {
  'overview.of': question({
    input: overviewFilter,
    output: overview,
    reads: () => ['results', 'faces', 'specimens', 'studies', 'catalogue'],
  }),
  /** The same on one sheet of A3 as PDF, in the units of the reader, by a host that can print. */
  'overview.pdf': deed({
    input: z.strictObject({ filter: overviewFilter, view: overviewView, title: words }),
    output: z.strictObject({ bytes: z.instanceof(Uint8Array) }),
  }),
}
