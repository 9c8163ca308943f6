// Held by tests/archive/openArchive.spec.ts.
import { parentPort, workerData } from 'node:worker_threads'
import { troubleFrom } from '#contract/errors.ts'
import type { Progress } from '#contract/tasks.ts'
import type { Database } from './core/database.ts'
import { databaseTrouble } from './core/databaseTrouble.ts'
import type { OpenedArchive, OpeningOptions } from './core/openDatabase.ts'
import { takeTouched } from './core/touched.ts'
import { buffersOf, type Request, type Response, readyId } from './core/workerProtocol.ts'
import { longMethods, methods } from './methods.ts'
import { openHere } from './openHere.ts'

// The thread that SQLite lives in. It opens the archive of its workerData, answers calls in order, and ends with "close".

type Work = (database: Database, ...args: unknown[]) => unknown
type LongWork = (
  database: Database,
  onProgress: (progress: Progress) => void,
  isCancelled: () => boolean,
  ...args: unknown[]
) => unknown

if (parentPort === null) throw new TypeError('archiveWorker.ts must be started as a worker thread')
const port = parentPort
const options: OpeningOptions = workerData
const byName = new Map<string, Work>(Object.entries(methods) as [string, Work][])

function send(response: Response, move: ArrayBuffer[] = []): void {
  port.postMessage(response, move)
}

function progressOf(id: number): (progress: Progress) => void {
  return (progress) => send({ id, kind: 'progress', progress })
}

function work({ database }: OpenedArchive, { id, method, args }: Request): unknown {
  if (method === 'verify') return longMethods.verify(database, progressOf(id))
  if (Object.hasOwn(longMethods, method)) {
    const [stopped, ...rest] = args as [Int32Array, ...unknown[]]
    const long = longMethods[method as keyof typeof longMethods] as LongWork
    return long(database, progressOf(id), () => Atomics.load(stopped, 0) !== 0, ...rest)
  }
  const found = byName.get(method)
  if (found === undefined) throw new TypeError(`the archive has no method "${method}"`)
  return found(database, ...args)
}

function answer(archive: OpenedArchive, request: Request): void {
  const { id } = request
  try {
    const value = work(archive, request)
    const touched = takeTouched(archive.database)
    send({ id, kind: 'value', value, ...(touched.length === 0 ? {} : { touched }) }, buffersOf(value))
  } catch (thrown) {
    // It was rolled back, so nothing was touched.
    takeTouched(archive.database)
    send({ id, kind: 'trouble', trouble: troubleFrom(databaseTrouble(thrown, archive.path)) })
  }
}

try {
  const archive = openHere(options, progressOf(readyId))
  // Nobody has read anything yet that the opening could have touched.
  takeTouched(archive.database)
  port.on('message', (request: Request) => {
    if (request.method !== 'close') {
      answer(archive, request)
      return
    }
    archive.close()
    send({ id: request.id, kind: 'value', value: undefined })
    port.close()
  })
  send({ id: readyId, kind: 'value', value: [...byName.keys()] })
} catch (thrown) {
  send({ id: readyId, kind: 'trouble', trouble: troubleFrom(databaseTrouble(thrown, options.path)) })
  port.close()
}
