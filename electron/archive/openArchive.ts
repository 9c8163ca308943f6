import type { VerifyReport } from '#contract/keeping/archive.ts'
import type { Progress } from '#contract/tasks.ts'
import type { Topic } from '#contract/topics.ts'
import type { Archive } from './archive.ts'
import type { OpeningOptions } from './core/openDatabase.ts'
import { stopped } from './core/recordTrouble.ts'
import { connectWorker, type WorkerConnection } from './core/workerProtocol.ts'
import type { longMethods, Methods } from './methods.ts'
import { startThread } from './startThread.ts'

export type ArchiveOpening = {
  path: string
  /** Name and version of the program, noted in the archive when its format changes. */
  program: string
  /** write (default): the one program that may add records; creates the archive when there is none. read: looks only, beside a writer. */
  mode?: 'write' | 'read'
  /** The wall clock, ISO 8601 UTC. */
  clockInstant?: () => string
  /** Told when opening takes long because the lists of another version of the program are made again. */
  onProgress?: (progress: Progress) => void
}

/** Opens an archive in a thread of its own. Rejects with a Trouble that says what stands in the way and what to do. */
export async function openArchive(opening: ArchiveOpening): Promise<Archive> {
  const { path, program, mode = 'write', clockInstant = () => new Date().toISOString(), onProgress } = opening
  const options: OpeningOptions = { path, program, mode, instant: clockInstant() }
  const listeners = new Set<(topics: readonly Topic[]) => void>()
  const writer = connectWorker(
    startThread('archiveWorker', options),
    (topics) => {
      for (const listener of listeners) listener(topics)
    },
    (progress) => onProgress?.(progress as Progress),
  )
  // The worker says what it can be asked for, so that the functions themselves stay in its thread.
  const names = (await writer.ready) as readonly (keyof Methods)[]
  const ask =
    (name: string) =>
    (...args: unknown[]) =>
      writer.call(name, args)
  const calls = Object.fromEntries(names.map((name) => [name, ask(name)])) as Pick<Archive, keyof Methods>
  let closing: Promise<void> | undefined
  return {
    ...calls,
    verify: (tell, signal) => verifyApart(options, tell, signal),
    rebuildDerived: (tell, signal) => runLong(writer, 'rebuildDerived', tell, signal),
    allocateStudy: (tell, signal, ...args) => runLong(writer, 'allocateStudy', tell, signal, ...args),
    storeImport: (tell, signal, made) => runLong(writer, 'storeImport', tell, signal, made),
    moveSpecimens: (tell, signal, ...args) => runLong(writer, 'moveSpecimens', tell, signal, ...args),
    withdrawSpecimens: (tell, signal, ...args) => runLong(writer, 'withdrawSpecimens', tell, signal, ...args),
    storeReadings: (tell, signal, made) => runLong(writer, 'storeReadings', tell, signal, made),
    onChange(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    close() {
      closing ??= writer.call('close', []).then(() => undefined)
      return closing
    },
  }
}

/** Verifies in a second thread with a connection that only reads, so that a running capture is never kept waiting. */
async function verifyApart(
  options: OpeningOptions,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<VerifyReport> {
  const cancelled = stopped('The check of the archive was stopped.')
  if (signal.aborted) throw cancelled
  const reader = connectWorker(startThread('archiveWorker', { ...options, mode: 'read' }))
  const stop = () => void reader.stop(cancelled)
  signal.addEventListener('abort', stop)
  try {
    await reader.ready
    const report = await reader.call('verify', [], (progress) => onProgress(progress as Progress))
    return report as VerifyReport
  } finally {
    signal.removeEventListener('abort', stop)
    await reader.stop(cancelled)
  }
}

/** The thread is busy until all is done, so it looks at memory that both share for whether it is to stop. */
async function runLong<Result>(
  writer: WorkerConnection,
  method: Exclude<keyof typeof longMethods, 'verify'>,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
  ...args: readonly unknown[]
): Promise<Result> {
  const stopped = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT))
  const stop = () => Atomics.store(stopped, 0, 1)
  if (signal.aborted) stop()
  signal.addEventListener('abort', stop)
  try {
    const done = await writer.call(method, [stopped, ...args], (progress) => onProgress(progress as Progress))
    return done as Result
  } finally {
    signal.removeEventListener('abort', stop)
  }
}
