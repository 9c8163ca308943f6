// Held by tests/shells/start/build.spec.ts.
import { parentPort, workerData } from 'node:worker_threads'
import { openReader, type ReaderOpening } from '#archive/archiveReader.ts'
import { troubleFrom } from '#contract/errors.ts'
import { type ReevaluationOrder, reevaluateBreaks } from './reevaluateBreaks.ts'
import { batchesOf } from './reevaluationBatches.ts'
import { mostUnread, type WorkerMessage } from './reevaluationThread.ts'

// The thread that reads curves and evaluates them. It only reads the archive; the main thread stores what it finds, and says
// after each batch that it may go on, so that results never pile up.

if (parentPort === null) throw new TypeError('reevaluationWorker.ts must be started as a worker thread')
const port = parentPort
const { opening, order }: { opening: ReaderOpening; order: ReevaluationOrder } = workerData

let unread = 0
let goOn = () => {}
port.on('message', () => {
  unread -= 1
  goOn()
})

async function send(message: WorkerMessage): Promise<void> {
  while (unread >= mostUnread)
    await new Promise<void>((resolve) => {
      goOn = resolve
    })
  unread += 1
  port.postMessage(message)
}

try {
  const archive = openReader(opening)
  for (const results of batchesOf(reevaluateBreaks(archive, order), () => performance.now()))
    await send({ kind: 'results', results })
  archive.close()
  port.postMessage({ kind: 'done' } satisfies WorkerMessage)
} catch (thrown) {
  port.postMessage({ kind: 'trouble', trouble: troubleFrom(thrown) } satisfies WorkerMessage)
}
port.close()
