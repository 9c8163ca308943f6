import * as z from 'zod'
import { groupTraits } from '../breaks/breakGroup.ts'
import { question } from '../procedure.ts'
import { finite, id, kept, positive, words } from '../values.ts'
import { findingLine } from './lines.ts'
import { findingsOptions } from './options.ts'

const traits = groupTraits.omit({ ageMonths: true })
const some = <Item extends z.ZodType>(item: Item) => z.array(item).nullable().default(null)

/** Which results are asked about, by what their blocks are; null: all. */
export const findingsFilter = z.strictObject({
  /** Blocks of one study alone. */
  studyId: id.nullable().default(null),
  adhesives: some(words),
  jointTypes: some(words),
  exposures: some(words),
  bondLineGapsMm: some(finite.nullable()),
  agesMonths: some(finite.nullable()),
})
export type FindingsFilter = z.infer<typeof findingsFilter>

/** A group of blocks that were made alike; lines of findings name it by its key. */
export const findingsGroup = z.strictObject({ key: z.string(), ...traits.shape })
export type FindingsGroup = z.infer<typeof findingsGroup>

/** A result that findings rest on, with the way back to it. */
export const findingsBlock = z.strictObject({
  group: z.string(),
  ageMonths: finite.nullable(),
  /** Its own age; `ageMonths` is that of its group, a few weeks off. */
  ageAtBreakMonths: finite.nullable(),
  specimenId: id,
  /** null: there is no curve, only a peak. */
  breakId: id.nullable(),
  number: kept,
  strengthMPa: positive,
  woodFailurePercent: finite.nullable(),
  excludedBecause: kept.nullable(),
  simulated: z.boolean(),
})
export type FindingsBlock = z.infer<typeof findingsBlock>

/** What can be said of the results, and what it rests on. */
export const findings = z.strictObject({
  groups: z.array(findingsGroup),
  blocks: z.array(findingsBlock),
  lines: z.array(findingLine),
  /** SHA-256 of the canonical JSON of every result used. */
  dataSha256: z.string().regex(/^[0-9a-f]{64}$/),
  /** How many parts of the answer had to be worked out; the others rest on what did not change. */
  computed: z.int().nonnegative(),
})
export type Findings = z.infer<typeof findings>

/** What is asked of the findings. */
export const findingsQuestion = z.strictObject({
  options: findingsOptions.prefault({}),
  filter: findingsFilter.prefault({}),
})
export type FindingsQuestion = z.infer<typeof findingsQuestion>

/** Statistics of results: worked out in a thread of their own, told of by the task "findings", and stopped with it. */
export const findingsProcedures = {
  'findings.of': question({
    input: findingsQuestion,
    output: findings,
    // Windows of pulls say of which age a block is
    reads: () => ['results', 'faces', 'catalogue', 'studies'],
  }),
}
