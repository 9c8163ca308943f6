import * as z from 'zod'
import { deed, question } from '../procedure.ts'
import { preferences } from '../settings/settings.ts'
import { taskName } from '../tasks.ts'
import { everyRecord } from '../topics.ts'
import { nothing } from '../values.ts'
import { archiveInfo, chainHead, headFinding, verifyReport } from './archive.ts'

/** What concerns the whole program and its archive. */
export const keepingProcedures = {
  'app.info': question({
    input: nothing,
    output: z.strictObject({
      program: z.string(),
      host: z.enum(['desktop', 'loopback', 'direct']),
      /** What this host can do beyond the common ground. */
      capabilities: z.array(z.enum(['choose-file', 'print-to-pdf'])),
      archive: archiveInfo,
      /** What is wrong with the chain, held against the head that was kept of it outside the file. */
      chainFinding: headFinding.nullable(),
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
  /** Stops a long task; true when it was running. */
  'task.cancel': deed({ input: z.strictObject({ task: taskName }), output: z.boolean() }),
}
