import { parentPort, workerData } from 'node:worker_threads'
import { troubleFrom } from '#contract/errors.ts'
import { longMethods, methods } from '../methods.ts'
import { databaseTrouble } from './databaseTrouble.ts'
import { type OpenedArchive, type OpeningOptions, openDatabase } from './openDatabase.ts'
import { takeTouched } from './touched.ts'
import { buffersOf, type Request, type Response, readyId } from './workerProtocol.ts'

// The thread that SQLite lives in. It opens the archive of its workerData, answers calls in order, and ends with "close".

type Work = (archive: OpenedArchive, ...args: unknown[]) => unknown

if (parentPort === null) throw new TypeError('archiveWorker.ts must be started as a worker thread')
const port = parentPort
const options: OpeningOptions = workerData

const table = new Map<string, Work>([
  ...(Object.entries(methods) as [string, Work][]),
  ...(Object.entries(longMethods) as [string, Work][]),
])

function send(response: Response, move: ArrayBuffer[] = []): void {
  port.postMessage(response, move)
}

function answer(archive: OpenedArchive, { id, method, args }: Request): void {
  try {
    const work = table.get(method)
    if (work === undefined) throw new TypeError(`the archive has no method "${method}"`)
    // Only long methods take a listener for progress; the others have no argument left for it.
    const report = (progress: unknown) => send({ id, kind: 'progress', progress })
    const value = method in longMethods ? work(archive, report, ...args) : work(archive, ...args)
    const touched = takeTouched(archive.database)
    send({ id, kind: 'value', value, ...(touched.length === 0 ? {} : { touched }) }, buffersOf(value))
  } catch (thrown) {
    // It was rolled back, so nothing was touched.
    takeTouched(archive.database)
    send({ id, kind: 'trouble', trouble: troubleFrom(databaseTrouble(thrown, archive.path)) })
  }
}

try {
  const archive = openDatabase(options)
  port.on('message', (request: Request) => {
    if (request.method !== 'close') {
      answer(archive, request)
      return
    }
    archive.close()
    send({ id: request.id, kind: 'value', value: undefined })
    port.close()
  })
  send({ id: readyId, kind: 'value', value: undefined })
} catch (thrown) {
  send({ id: readyId, kind: 'trouble', trouble: troubleFrom(databaseTrouble(thrown, options.path)) })
  port.close()
}
