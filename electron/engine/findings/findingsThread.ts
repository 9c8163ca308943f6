import type { ReaderOpening } from '#archive/archiveReader.ts'
import { questionThread, type ThreadMessage } from '../core/questionThread.ts'
import type { AnswerOf, FindingsName, OnProgress, QuestionOf } from './findingsAnswers.ts'

/** A question under the name of its procedure. */
export type FindingsOrder<Name extends FindingsName = FindingsName> = {
  opening: ReaderOpening
  name: Name
  question: QuestionOf<Name>
}
export type FindingsMessage = ThreadMessage<AnswerOf<FindingsName>>

/** The thread of the statistics, which remembers what it worked out. */
export type FindingsThread = {
  /** Asks one question, as a thread that answers does. */
  ask<Name extends FindingsName>(
    order: FindingsOrder<Name>,
    signal: AbortSignal,
    onProgress: OnProgress,
  ): Promise<AnswerOf<Name>>
  close(): Promise<void>
}

/** Starts no thread yet. */
export function findingsThread(): FindingsThread {
  const thread = questionThread<FindingsOrder<FindingsName>, unknown>('findingsWorker')
  return {
    // One question at a time: the answer is that to this one
    ask: <Name extends FindingsName>(order: FindingsOrder<Name>, signal: AbortSignal, onProgress: OnProgress) =>
      thread.ask(order, signal, onProgress) as Promise<AnswerOf<Name>>,
    close: thread.close,
  }
}
