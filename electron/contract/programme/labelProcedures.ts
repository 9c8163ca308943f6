import * as z from 'zod'
import { deed, question } from '../procedure.ts'
import { type Topic, topicsOf } from '../topics.ts'
import { id, kept, positive, words } from '../values.ts'
import { labelSheet } from './labelSheet.ts'
import { ageMonths, series } from './study.ts'

const running = z.int().positive().max(9_999_999)

/** More specimens than this are not labelled at once. */
export const mostLabels = 20_000

/** More running numbers than this are not labelled at once: they are a thousand pages. */
export const mostNumbers = 50_000

/** Which labels: all blocks of a study; running numbers, both included; or specimens. */
export const labelChoice = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('study'), studyId: id }),
  z
    .strictObject({ kind: z.literal('numbers'), first: running, last: running })
    .refine(({ first, last }) => last - first < mostNumbers, `names more than ${mostNumbers} numbers`),
  z.strictObject({ kind: z.literal('specimens'), specimenIds: z.array(id).min(1).max(mostLabels) }),
])
export type LabelChoice = z.infer<typeof labelChoice>

/** What is known of a number: the block that has it or is to have it; null: none yet. */
export const labelledBlock = z.strictObject({
  number: kept,
  /** `ageMonths` null: a spare, or a block of no study. */
  group: z
    .strictObject({ ...series.shape, gapMm: series.shape.gapMm.nullable(), ageMonths: ageMonths.nullable() })
    .nullable(),
})
export type LabelledBlock = z.infer<typeof labelledBlock>

const asked = z.strictObject({ choice: labelChoice, sheet: labelSheet })

/** What a number that was typed or scanned leads to. */
export const foundNumber = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('specimen'), specimenId: id, number: kept }),
  /** A block of a study that nobody glued yet. */
  z.strictObject({ kind: z.literal('planned'), number: kept, studyId: id, studyTitle: kept, block: labelledBlock }),
  /** `wrongCheck`: the check digit does not fit. `nearest`: numbers one slip away that there are, likeliest first. */
  z.strictObject({ kind: z.literal('none'), wrongCheck: z.boolean(), nearest: z.array(kept) }),
])
export type FoundNumber = z.infer<typeof foundNumber>

/** What a number leads to; of a specimen what is asked before a result is typed for it. */
export const numberedSpecimen = z.strictObject({
  /** As it was asked for. */
  number: kept,
  found: foundNumber,
  areaMm2: positive.nullable(),
  timesBroken: z.int().nonnegative(),
})
export type NumberedSpecimen = z.infer<typeof numberedSpecimen>

const readsOf = (choice: LabelChoice): Topic[] =>
  choice.kind === 'study' ? topicsOf('study', [choice.studyId]) : ['studies', 'specimens']

/** Labels on sheets, and blocks found by their numbers. */
export const labelProcedures = {
  /** The pages as SVG texts; `from` the first, `count` how many. */
  'labels.pages': question({
    input: z.strictObject({ ...asked.shape, from: z.int().nonnegative(), count: z.int().positive().max(1000) }),
    output: z.strictObject({
      labels: z.int().nonnegative(),
      pages: z.int().nonnegative(),
      drawn: z.array(z.string()),
    }),
    reads: ({ choice }) => readsOf(choice),
  }),
  /** The sheets as PDF, by a host that can print. */
  'labels.pdf': deed({ input: asked, output: z.strictObject({ bytes: z.instanceof(Uint8Array) }) }),
  /** A whole list of numbers, in its order. */
  'numbers.list': question({
    input: z.strictObject({ numbers: z.array(words.min(1)).max(1000) }),
    output: z.array(numberedSpecimen),
    reads: () => ['specimens', 'studies'],
  }),
  'numbers.find': deed({ input: z.strictObject({ number: words.min(1) }), output: foundNumber }),
}
