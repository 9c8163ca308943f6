import { on } from 'node:events'
import type { Worker } from 'node:worker_threads'
import type { ReaderOpening } from '#archive/archiveReader.ts'
import { startThread } from '#archive/startThread.ts'
import { Trouble, type TroubleMessage } from '#contract/errors.ts'
import type { AnswerOf, FindingsName, OnProgress, QuestionOf } from './findingsAnswers.ts'

/** A question under the name of its procedure. */
export type FindingsOrder<Name extends FindingsName = FindingsName> = {
  opening: ReaderOpening
  name: Name
  question: QuestionOf<Name>
}
export type FindingsMessage =
  | { kind: 'progress'; done: number; total: number }
  | { kind: 'answer'; answer: AnswerOf<FindingsName> }
  | { kind: 'trouble'; trouble: TroubleMessage }

/** The thread of the statistics: started by the first question, and kept, for it remembers what it worked out. */
export type FindingsThread = {
  /**
   * Asks one question; the next only when it is answered. Rejects with the Trouble of reading the archive, and with the signal's
   * reason when it is aborted, which ends the thread: the next question starts another.
   */
  ask<Name extends FindingsName>(
    order: FindingsOrder<Name>,
    signal: AbortSignal,
    onProgress: OnProgress,
  ): Promise<AnswerOf<Name>>
  close(): Promise<void>
}

/** Starts no thread yet. */
export function findingsThread(): FindingsThread {
  let worker: Worker | null = null
  async function end() {
    const ended = worker
    worker = null
    await ended?.terminate()
  }
  return {
    async ask<Name extends FindingsName>(order: FindingsOrder<Name>, signal: AbortSignal, onProgress: OnProgress) {
      signal.throwIfAborted()
      if (worker === null) {
        worker = startThread('findingsWorker', null)
        // Whoever waits hears of it by the exit; nobody else is concerned, and it must not end the program.
        worker.on('error', () => {})
        worker.unref()
      }
      const asked = worker
      try {
        const messages = on(asked, 'message', { signal, close: ['exit'] }) as AsyncIterable<[FindingsMessage]>
        asked.postMessage(order)
        for await (const [message] of messages) {
          // One question at a time: the answer is that to this one
          if (message.kind === 'answer') return message.answer as AnswerOf<Name>
          if (message.kind === 'progress') onProgress(message.done, message.total)
          else throw new Trouble(message.trouble.code, message.trouble.message, message.trouble.hint)
        }
        throw new Trouble('internal', 'The thread of the statistics ended early.', 'Ask again.')
      } catch (thrown) {
        await end()
        throw thrown
      }
    },
    close: end,
  }
}
