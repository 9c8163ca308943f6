import { on } from 'node:events'
import type { ReaderOpening } from '#archive/archiveReader.ts'
import { startThread } from '#archive/startThread.ts'
import { Trouble, type TroubleMessage } from '#contract/errors.ts'
import type { Reevaluated, ReevaluationOrder } from './reevaluateBreaks.ts'

export type WorkerMessage =
  | { kind: 'results'; results: Reevaluated[] }
  | { kind: 'done' }
  | { kind: 'trouble'; trouble: TroubleMessage }

/** One batch may wait while the one before it is stored; then the thread waits too. */
export const mostUnread = 2

/**
 * Evaluates breaks in a thread of its own, and yields results in small batches; it goes on when the next is asked for. Ends
 * the thread in any case. Throws a Trouble when the archive cannot be read, and the signal's reason when it is aborted.
 */
export async function* reevaluationThread(
  opening: ReaderOpening,
  order: ReevaluationOrder,
  signal: AbortSignal,
): AsyncGenerator<Reevaluated[]> {
  signal.throwIfAborted()
  const worker = startThread('reevaluationWorker', { opening, order })
  // Once the loop below has let go of it (on abort at once), a failure of the thread concerns nobody, and must not end the program.
  worker.on('error', () => {})
  try {
    for await (const [message] of on(worker, 'message', { signal, close: ['exit'] }) as AsyncIterable<
      [WorkerMessage]
    >) {
      if (message.kind === 'done') return
      if (message.kind === 'trouble') {
        const { code, message: text, hint } = message.trouble
        throw new Trouble(code, text, hint)
      }
      yield message.results
      worker.postMessage('stored')
    }
    throw new Trouble(
      'internal',
      'The thread that evaluates again ended early.',
      'Start it again; what was stored stays.',
    )
  } finally {
    await worker.terminate()
  }
}
