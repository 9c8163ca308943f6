import * as z from 'zod'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { deed, question } from '../procedure.ts'
import { id, note, nothing, reason, words } from '../values.ts'
import { findingChanges, findingsSettings, keptFindingRow } from './keptFinding.ts'

const signature = { by: words, reason }

/** Findings that are kept under a name, and whether they still hold. */
export const keptFindingProcedures = {
  /** Those on the list, newest first. */
  'findings.kept': question({
    input: nothing,
    output: z.strictObject({ rows: z.array(keptFindingRow), unreadable: unreadableRecords }),
    reads: () => ['kept-findings', 'results', 'faces', 'catalogue', 'studies'],
  }),
  'findings.changes': question({
    input: z.strictObject({ keptFindingId: id }),
    output: findingChanges,
    reads: ({ keptFindingId }) => [`kept-finding ${keptFindingId}`, 'results', 'faces', 'catalogue', 'studies'],
  }),
  /** `keptFindingId` null: a new one; else a newer version of that one. The blocks are those that the settings ask for now. */
  'findings.keep': deed({
    input: z.strictObject({
      keptFindingId: id.nullable(),
      name: words.min(1),
      settings: findingsSettings,
      said: z.array(note).max(1000),
      ...signature,
    }),
    output: z.strictObject({ keptFindingId: id, revision: z.int().positive() }),
  }),
  'findings.unlist': deed({ input: z.strictObject({ keptFindingId: id, ...signature }), output: nothing }),
}
