import * as z from 'zod'
import { troubleMessage } from '../errors.ts'
import { deed, question } from '../procedure.ts'
import { preferences } from '../settings/settings.ts'
import { taskName } from '../tasks.ts'
import { everyRecord } from '../topics.ts'
import { nothing } from '../values.ts'
import {
  archiveChoice,
  archiveInfo,
  chainHead,
  filePurpose,
  headFinding,
  knownArchive,
  verifyReport,
} from './archive.ts'

/** What concerns the whole program and its archive. */
export const keepingProcedures = {
  'app.info': question({
    input: nothing,
    output: z.strictObject({
      program: z.string(),
      host: z.enum(['desktop', 'loopback', 'direct']),
      /** What this host can do beyond the common ground. */
      capabilities: z.array(z.enum(['choose-file', 'print-to-pdf', 'switch-archive'])),
      archive: archiveInfo,
      /** What is wrong with the chain, held against the head that was kept of it outside the file. */
      chainFinding: headFinding.nullable(),
      /** What could not be read when the archive was opened; null: all could. */
      openingTrouble: troubleMessage.nullable(),
      /** The archive was opened for the demo and holds nothing of a person's own: only here is there a virtual bench. */
      demo: z.boolean(),
      preferences,
    }),
    reads: () => ['specimens', 'breaks', 'preferences'],
  }),
  /** The newest entry of the chain; null: it has none yet. Any record may add one. */
  'archive.head': question({
    input: nothing,
    output: chainHead.nullable(),
    reads: () => everyRecord,
  }),
  /** Runs as the task `verify`. */
  'archive.verify': deed({ input: nothing, output: verifyReport }),
  /** Runs as the task `demo`. */
  'demo.fill': deed({ input: nothing, output: archiveInfo }),
  /**
   * For hosts that can `switch-archive`: opens another archive in place of the one that is open; the demo is filled and its
   * virtual bench connected. Everything that was shown before belongs to the other one.
   */
  'archive.switch': deed({ input: z.strictObject({ to: archiveChoice }), output: nothing }),
  /** For hosts that can `switch-archive`: the archives that can be opened without naming a file. */
  'archive.known': question({ input: nothing, output: z.array(knownArchive), reads: () => [] }),
  /** For hosts that can `choose-file`: asks the person for a file; null: none was chosen. */
  'archive.choose': deed({
    input: z.strictObject({ purpose: filePurpose }),
    output: z.strictObject({ path: z.string().nullable() }),
  }),
  /** Stops a long task; true when it was running. */
  'task.cancel': deed({ input: z.strictObject({ task: taskName }), output: z.boolean() }),
}
