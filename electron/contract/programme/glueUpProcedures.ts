import * as z from 'zod'
import { deed, question } from '../procedure.ts'
import { signature } from '../signature.ts'
import { topicsOf } from '../topics.ts'
import { finite, id, isoDate, kept, nothing, positive, words } from '../values.ts'
import { glueUp, glueUpCorrection, glueUpFields } from './glueUp.ts'
import { ageMonths, series } from './study.ts'

/** What the calipers gave of a block, mm and mm2, and where it goes. */
const measured = {
  overlapLengthMm: positive.nullable().default(null),
  overlapWidthMm: positive.nullable().default(null),
  areaMm2: positive.nullable().default(null),
  place: words.default(''),
  /** The size is that of the plan: nobody measured it. */
  asPlanned: z.boolean().default(false),
}

/** A planned block that is glued now, or one of no study. */
export const newGluedBlock = z.union([
  z.strictObject({ blockId: id, ...measured }),
  z.strictObject({
    /** As written on the block; '': it gets the next short number. */
    number: words.default(''),
    adhesive: words.min(1),
    jointType: words.default(''),
    exposure: words.default(''),
    bondLineGapMm: finite.nonnegative().nullable().default(null),
    wood: words.default(''),
    board: words.default(''),
    ...measured,
  }),
])
export type NewGluedBlock = z.infer<typeof newGluedBlock>

/** More blocks nobody glues in one session. */
const mostBlocks = 5000

const glueUpRow = z.strictObject({
  ...glueUp.shape,
  /** null: blocks of no study. */
  studyTitle: kept.nullable(),
  blocks: z.int().nonnegative(),
})
export type GlueUpRow = z.infer<typeof glueUpRow>

/** A block that a study plans and nobody glued yet. */
const blockToGlue = z.strictObject({
  blockId: id,
  /** Its label: running number and check digit. */
  number: kept,
  ...series.shape,
  ageMonths: ageMonths.nullable(),
  board: kept,
})
export type BlockToGlue = z.infer<typeof blockToGlue>

/** What of a study is still to be glued, and the size that was planned. */
const glueUpPlan = z.strictObject({
  studyId: id,
  title: kept,
  wood: kept,
  overlapLengthMm: positive.nullable(),
  overlapWidthMm: positive.nullable(),
  blocks: z.array(blockToGlue),
})
export type GlueUpPlan = z.infer<typeof glueUpPlan>

/** A study with blocks that are still to be glued. */
const studyToGlue = z.strictObject({
  studyId: id,
  title: kept,
  startOn: isoDate.nullable(),
  toGlue: z.int().positive(),
})
export type StudyToGlue = z.infer<typeof studyToGlue>

/** A glue-up with the specimens that it made, as they are now. */
const glueUpRecord = z.strictObject({
  ...glueUpRow.shape,
  /** As it was entered at first, where it was corrected since. */
  entered: glueUpFields.nullable(),
  /** Oldest first. */
  corrections: z.array(glueUpCorrection),
  specimens: z.array(
    z.strictObject({
      specimenId: id,
      number: kept,
      adhesive: kept,
      exposure: kept,
      /** null: a spare, or a block of no study. */
      ageMonths: ageMonths.nullable(),
      board: kept,
      overlapLengthMm: positive.nullable(),
      overlapWidthMm: positive.nullable(),
      areaMm2: positive.nullable(),
      place: kept,
    }),
  ),
})
export type GlueUpRecord = z.infer<typeof glueUpRecord>

/** Glue-ups: what can be glued, what was, and a session that makes specimens of its blocks. */
export const glueUpProcedures = {
  'glueUps.list': question({ input: nothing, output: z.array(glueUpRow), reads: () => ['glue-ups', 'studies'] }),
  'glueUps.get': question({
    input: z.strictObject({ glueUpId: id }),
    output: glueUpRecord,
    reads: ({ glueUpId }) => [...topicsOf('glue-up', [glueUpId]), 'specimens', 'studies'],
  }),
  'glueUps.studies': question({
    input: nothing,
    output: z.array(studyToGlue),
    reads: () => ['studies', 'glue-ups'],
  }),
  'glueUps.plan': question({
    input: z.strictObject({ studyId: id }),
    output: glueUpPlan,
    reads: ({ studyId }) => [...topicsOf('study', [studyId]), 'glue-ups'],
  }),
  /** Makes a specimen of each block, all or none. A block that was glued before is a conflict. */
  'glueUps.add': deed({
    input: z.strictObject({
      studyId: id.nullable(),
      fields: glueUpFields,
      blocks: z.array(newGluedBlock).min(1).max(mostBlocks),
      by: words,
    }),
    output: glueUpRow,
  }),
  /** Lays a correction over what was entered; its specimens, and what was decided about its pulls, follow. */
  'glueUps.correct': deed({
    input: z.strictObject({ glueUpId: id, fields: glueUpFields, ...signature.shape }),
    output: glueUpRow,
  }),
}
