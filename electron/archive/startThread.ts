import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import { Trouble } from '#contract/errors.ts'

/** The threads that are built. */
export type ThreadName = 'archiveWorker' | 'reevaluationWorker' | 'findingsWorker' | 'climateWorker'

/**
 * Starts a thread of the program from its built file, also when the program runs from source: Node strips types with
 * WebAssembly, and V8 ends the whole process when two threads let go of such code at the same moment (seen: one in some two
 * thousand starts of a thread, "Check failed: jit_page_->allocations_.erase(addr) == 1").
 */
export function startThread(name: ThreadName, workerData: unknown): Worker {
  const folder = import.meta.url.endsWith('.ts') ? '../../dist/threads' : '../threads'
  const file = fileURLToPath(new URL(`${folder}/${name}.js`, import.meta.url))
  if (!existsSync(file))
    throw new Trouble(
      'internal',
      `A part of the program is missing: ${file}.`,
      'Run "npm run build" and start it again.',
    )
  return new Worker(file, { workerData })
}
