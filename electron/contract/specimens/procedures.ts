import * as z from 'zod'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { listQuery } from '../listQuery.ts'
import { deed, question } from '../procedure.ts'
import { signature } from '../signature.ts'
import { topicsOf } from '../topics.ts'
import { id, words } from '../values.ts'
import { specimen, specimenFields } from './specimen.ts'
import { specimenRecord, specimenSummary } from './specimenRecord.ts'
import { dialReading, typedResult, typedResultDecision, typedResultWord } from './typedResult.ts'
import { withdrawal } from './withdrawal.ts'

const specimenId = z.strictObject({ specimenId: id })

/** More are not taken in one act. */
const specimenIds = z.array(id).min(1).max(100_000)

/** Specimens: listed, opened, added, corrected by a newer revision. */
export const specimenProcedures = {
  'specimens.list': question({
    input: listQuery,
    output: z.strictObject({ total: z.int(), rows: z.array(specimenSummary), unreadable: unreadableRecords }),
    // A row shows the title of its study
    reads: () => ['specimens', 'studies'],
  }),
  'specimens.get': question({
    input: specimenId,
    output: specimenRecord,
    reads: ({ specimenId }) => topicsOf('specimen', [specimenId]),
  }),
  /** Records readings of a dial, all or none, on days without electronics. */
  'typedResults.add': deed({
    input: z.strictObject({ readings: z.array(dialReading).min(1).max(1000), by: words }),
    output: z.array(typedResult),
  }),
  /** Sets a result without a curve aside, or lets it count again. */
  'typedResults.decide': deed({
    input: z.strictObject({ typedResultId: id, ...typedResultWord.shape }),
    output: typedResultDecision,
  }),
  /** The numbers of all that fit, in the order of the list. */
  'specimens.ids': question({
    input: listQuery.omit({ offset: true, limit: true }),
    output: z.array(id),
    reads: () => ['specimens'],
  }),
  /** Gives back how many were moved; those that lie there already stay as they are. */
  'specimens.move': deed({
    input: z.strictObject({ specimenIds, place: words, ...signature.shape }),
    output: z.int(),
  }),
  /** Gives back how many were withdrawn or taken back. */
  'specimens.withdraw': deed({
    input: z.strictObject({ specimenIds, kind: withdrawal.shape.kind, ...signature.shape }),
    output: z.int(),
  }),
  'specimens.add': deed({ input: z.strictObject({ fields: specimenFields, by: words }), output: specimen }),
  'specimens.correct': deed({
    input: z.strictObject({ ...specimenId.shape, fields: specimenFields, ...signature.shape }),
    output: specimen,
  }),
}
