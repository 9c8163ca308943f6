// Held by tests/engine/findings/findingsThread.spec.ts.
import { parentPort } from 'node:worker_threads'
import { openReader } from '#archive/archiveReader.ts'
import { troubleFrom } from '#contract/errors.ts'
import { seldomTold } from '../core/questionThread.ts'
import { type AnswerOf, type FindingsName, findingsAnswers, findingsMemory } from './findingsAnswers.ts'
import type { FindingsMessage, FindingsOrder } from './findingsThread.ts'

// The thread that works findings out, one question after the other, from the archive as it is when it is asked.

if (parentPort === null) throw new TypeError('findingsWorker.ts must be started as a worker thread')
const port = parentPort
const memory = findingsMemory()
const send = (message: FindingsMessage) => port.postMessage(message)

port.on('message', ({ opening, name, question }: FindingsOrder) => {
  try {
    const archive = openReader(opening)
    try {
      // The question came with the name of its own procedure
      const answerOf = findingsAnswers[name] as (...asked: unknown[]) => AnswerOf<FindingsName>
      send({ kind: 'answer', answer: answerOf(archive, question, memory, seldomTold(send), opening.instant) })
    } finally {
      archive.close()
    }
  } catch (thrown) {
    send({ kind: 'trouble', trouble: troubleFrom(thrown) })
  }
})
