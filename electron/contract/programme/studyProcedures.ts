import * as z from 'zod'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { deed, question } from '../procedure.ts'
import { signature } from '../signature.ts'
import { topicsOf } from '../topics.ts'
import { id, nothing, words } from '../values.ts'
import { study, studyFields } from './study.ts'
import { allocationDone, archiveVariation, studyRecord, studySummary } from './studyRecord.ts'

const studyId = z.strictObject({ studyId: id })

/** Studies: planned, corrected by a newer version, and their blocks allocated. */
export const studyProcedures = {
  /** Newest first. */
  'studies.list': question({
    input: nothing,
    output: z.strictObject({ rows: z.array(studySummary), unreadable: unreadableRecords }),
    reads: () => ['studies', 'specimens'],
  }),
  'studies.get': question({
    input: studyId,
    output: studyRecord,
    reads: ({ studyId }) => [...topicsOf('study', [studyId]), 'specimens', 'glue-ups', 'breakings'],
  }),
  'studies.add': deed({ input: z.strictObject({ fields: studyFields, by: words }), output: study }),
  /** A version may only add to what is allocated. */
  'studies.correct': deed({
    input: z.strictObject({ ...studyId.shape, fields: studyFields, ...signature.shape }),
    output: study,
  }),
  /** Gives every block of the plan that has none its number, its board and its place in the breaking order; the task `allocation`. */
  'studies.allocate': deed({
    input: z.strictObject({ ...studyId.shape, by: words }),
    output: allocationDone,
  }),
  /** The spread that the archive's own groups have; null: no group has two results. */
  'studies.variation': question({ input: nothing, output: archiveVariation.nullable(), reads: () => ['results'] }),
}
