// Held by tests/engine/findings/findingsThread.spec.ts.
import { on } from 'node:events'
import type { Worker } from 'node:worker_threads'
import { startThread, type ThreadName } from '#archive/startThread.ts'
import { Trouble, type TroubleMessage } from '#contract/errors.ts'

export type ThreadMessage<Answer> =
  | { kind: 'progress'; done: number; total: number }
  | { kind: 'answer'; answer: Answer }
  | { kind: 'trouble'; trouble: TroubleMessage }

/** A thread that answers: started by the first question, and kept, for it remembers what it worked out. */
export type QuestionThread<Order, Answer> = {
  /**
   * Asks one question; the next only when it is answered. Rejects with the Trouble that the thread tells, and with the signal's
   * reason when it is aborted, which ends the thread: the next question starts another. Trouble `cancelled` once it is closed.
   */
  ask(order: Order, signal: AbortSignal, onProgress: (done: number, total: number) => void): Promise<Answer>
  /** For good: what is being worked out is given up. */
  close(): Promise<void>
}

/** What is said to whoever asks something of an archive that is closed by then. */
export function closedBefore(): Trouble {
  return new Trouble('cancelled', 'The archive was closed before this was worked out.', 'Ask again.')
}

/** Starts no thread yet. */
export function questionThread<Order, Answer>(name: ThreadName): QuestionThread<Order, Answer> {
  let worker: Worker | null = null
  let closed = false
  function refuseOnceClosed() {
    if (closed) throw closedBefore()
  }
  async function end() {
    const ended = worker
    worker = null
    await ended?.terminate()
  }
  return {
    async ask(order, signal, onProgress) {
      signal.throwIfAborted()
      refuseOnceClosed()
      if (worker === null) {
        worker = startThread(name, null)
        // Whoever waits hears of it by the exit; nobody else is concerned, and it must not end the program.
        worker.on('error', () => {})
        worker.unref()
      }
      const asked = worker
      try {
        const messages = on(asked, 'message', { signal, close: ['exit'] }) as AsyncIterable<[ThreadMessage<Answer>]>
        asked.postMessage(order)
        for await (const [message] of messages) {
          if (message.kind === 'answer') return message.answer
          if (message.kind === 'progress') onProgress(message.done, message.total)
          else throw new Trouble(message.trouble.code, message.trouble.message, message.trouble.hint)
        }
        refuseOnceClosed()
        throw new Trouble('internal', 'The thread that works this out ended early.', 'Ask again.')
      } catch (thrown) {
        await end()
        throw thrown
      }
    },
    async close() {
      closed = true
      await end()
    },
  }
}

/** More often nobody sees it. */
const tellEveryMs = 100

/** Tells how far a thread is, as often as a person sees it. */
export function seldomTold(send: (message: ThreadMessage<never>) => void): (done: number, total: number) => void {
  let toldMs = 0
  return (done, total) => {
    const nowMs = performance.now()
    if (nowMs - toldMs < tellEveryMs) return
    toldMs = nowMs
    send({ kind: 'progress', done, total })
  }
}
