import * as z from 'zod'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { listQuery } from '../listQuery.ts'
import { deed, question } from '../procedure.ts'
import { signature } from '../signature.ts'
import { topicsOf } from '../topics.ts'
import { id, words } from '../values.ts'
import { specimen, specimenFields } from './specimen.ts'
import { specimenRecord, specimenSummary } from './specimenRecord.ts'

const specimenId = z.strictObject({ specimenId: id })

/** Specimens: listed, opened, added, corrected by a newer revision. */
export const specimenProcedures = {
  'specimens.list': question({
    input: listQuery,
    output: z.strictObject({ total: z.int(), rows: z.array(specimenSummary), unreadable: unreadableRecords }),
    reads: () => ['specimens'],
  }),
  'specimens.get': question({
    input: specimenId,
    output: specimenRecord,
    reads: ({ specimenId }) => topicsOf('specimen', [specimenId]),
  }),
  'specimens.add': deed({ input: z.strictObject({ fields: specimenFields, by: words }), output: specimen }),
  'specimens.correct': deed({
    input: z.strictObject({ ...specimenId.shape, fields: specimenFields, ...signature.shape }),
    output: specimen,
  }),
}
