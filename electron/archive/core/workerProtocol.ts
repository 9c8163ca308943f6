import type { Worker } from 'node:worker_threads'
import { Trouble, type TroubleMessage } from '#contract/errors.ts'
import type { Topic } from '#contract/topics.ts'

/** A call by name. The arguments and the result are whatever can be cloned; typed arrays of a result are moved, not copied. */
export type Request = { id: number; method: string; args: unknown[] }
export type Response =
  | { id: number; kind: 'value'; value: unknown; touched?: readonly Topic[] }
  | { id: number; kind: 'trouble'; trouble: TroubleMessage }
  | { id: number; kind: 'progress'; progress: unknown }

/** The id under which a worker tells that it is ready, with what it can be asked for, or why it never will be. */
export const readyId = 0

export type WorkerConnection = {
  /** The names of all that can be asked for. */
  ready: Promise<readonly string[]>
  call(method: string, args: unknown[], onProgress?: (progress: unknown) => void): Promise<unknown>
  /** Stops the worker where it is; open calls reject with that trouble. */
  stop(trouble: Trouble): Promise<void>
}

type Pending = {
  resolve(value: unknown): void
  reject(reason: Error): void
  onProgress: ((progress: unknown) => void) | undefined
}

/**
 * Turns messages of a worker into promises. Knows nothing of what is asked. What a call touched is told before its promise
 * resolves.
 */
export function connectWorker(
  worker: Worker,
  onTouched: (topics: readonly Topic[]) => void = () => {},
  onReadying: (progress: unknown) => void = () => {},
): WorkerConnection {
  const pending = new Map<number, Pending>()
  let lastId = readyId
  let over: Error | undefined

  const expect = (id: number, onProgress?: (progress: unknown) => void) =>
    new Promise<unknown>((resolve, reject) => {
      pending.set(id, { resolve, reject, onProgress })
    })
  const end = (reason: Error) => {
    over ??= reason
    for (const { reject } of pending.values()) reject(over)
    pending.clear()
  }

  const ready = expect(readyId, onReadying) as Promise<readonly string[]>
  worker.on('message', (response: Response) => {
    const waiting = pending.get(response.id)
    if (waiting === undefined) return
    if (response.kind === 'progress') {
      waiting.onProgress?.(response.progress)
      return
    }
    pending.delete(response.id)
    if (response.kind === 'value') {
      if (response.touched !== undefined) onTouched(response.touched)
      waiting.resolve(response.value)
    } else waiting.reject(new Trouble(response.trouble.code, response.trouble.message, response.trouble.hint))
  })
  worker.on('error', (error) => end(new Trouble('internal', `The archive's thread failed: ${String(error)}`, restart)))
  worker.on('exit', () => end(new Trouble('conflict', 'The archive is closed.', 'Open it again.')))

  // Whoever stops a worker before it is ready may no longer be listening.
  ready.catch(() => {})

  return {
    ready,
    call(method, args, onProgress) {
      if (over !== undefined) return Promise.reject(over)
      lastId += 1
      const answer = expect(lastId, onProgress)
      const request: Request = { id: lastId, method, args: args.map(withoutSurroundings) }
      worker.postMessage(request)
      return answer
    },
    async stop(trouble) {
      end(trouble)
      await worker.terminate()
    },
  }
}

const restart = 'Start the program again; everything stored before is safe.'

/** A view takes its whole buffer along to another thread, so what is only a part of one crosses as a copy of its own. */
function withoutSurroundings(value: unknown): unknown {
  if (ArrayBuffer.isView(value)) return ownBuffer(value)
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value
  return Object.fromEntries(Object.entries(value).map(([key, member]) => [key, ownBuffer(member)]))
}

function ownBuffer(member: unknown): unknown {
  const isPart = ArrayBuffer.isView(member) && member.byteLength < member.buffer.byteLength
  return isPart && 'slice' in member && typeof member.slice === 'function' ? member.slice() : member
}

/** The buffers of the typed arrays that a result holds at its top level. */
export function buffersOf(value: unknown): ArrayBuffer[] {
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value)
    .filter((member) => ArrayBuffer.isView(member))
    .map((view) => view.buffer)
    .filter((buffer) => buffer instanceof ArrayBuffer)
}
