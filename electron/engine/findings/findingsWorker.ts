// Held by tests/engine/findings/findingsThread.spec.ts.
import { parentPort } from 'node:worker_threads'
import { openReader } from '#archive/archiveReader.ts'
import { troubleFrom } from '#contract/errors.ts'
import { rememberLines } from '#domain/findings/lines/rememberedLines.ts'
import { answerFindings } from './answerFindings.ts'
import type { FindingsMessage, FindingsOrder } from './findingsThread.ts'

// The thread that works findings out, one question after the other, from the archive as it is when it is asked.

if (parentPort === null) throw new TypeError('findingsWorker.ts must be started as a worker thread')
const port = parentPort
const memory = rememberLines()
const send = (message: FindingsMessage) => port.postMessage(message)
/** More often nobody sees it. */
const tellEveryMs = 100

port.on('message', ({ opening, question }: FindingsOrder) => {
  try {
    const archive = openReader(opening)
    try {
      let toldMs = 0
      const answer = answerFindings(archive, question, memory, (done, total) => {
        const nowMs = performance.now()
        if (nowMs - toldMs < tellEveryMs) return
        toldMs = nowMs
        send({ kind: 'progress', done, total })
      })
      send({ kind: 'answer', answer })
    } finally {
      archive.close()
    }
  } catch (thrown) {
    send({ kind: 'trouble', trouble: troubleFrom(thrown) })
  }
})
