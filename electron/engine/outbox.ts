import type { Clock } from '#acquisition/clock.ts'
import { Trouble, type TroubleMessage, troubleFrom } from '#contract/errors.ts'

/** Writes that must reach the archive one after the other. */
export type Outbox = {
  /** Puts a write at the end of the queue. It is tried until it succeeds; what it wrote half is the archive's to undo. */
  put(write: () => Promise<void>): void
  /** Resolves when the queue is empty. Rejects when, at that moment, the archive still refuses; the writes stay queued. */
  drained(): Promise<void>
  /** Tries what is left once more, then takes nothing further. Rejects when something could not be written. */
  close(): Promise<void>
}

export type OutboxOptions = {
  clock: Clock
  retryAfterS?: number
  /** null: writing goes on. Called when that changes, not on every attempt. */
  onProblem(problem: TroubleMessage | null): void
}

/**
 * An ordered queue of writes. When the disk is full or the archive is held by somebody else, the queue waits in memory and
 * tries again, so that a capture goes on and nothing is lost unless the program itself ends.
 */
export function createOutbox({ clock, retryAfterS = 2, onProblem }: OutboxOptions): Outbox {
  const queue: (() => Promise<void>)[] = []
  let working: Promise<void> | null = null
  let problem: TroubleMessage | null = null
  let callOffRetry: (() => void) | null = null
  let closed = false

  function setProblem(next: TroubleMessage | null) {
    if (next?.code === problem?.code && next?.message === problem?.message) return
    problem = next
    onProblem(next)
  }

  async function work() {
    while (queue.length > 0) {
      try {
        await queue[0]!()
      } catch (thrown) {
        setProblem(troubleFrom(thrown))
        if (!closed) callOffRetry = clock.after(retryAfterS, start)
        return
      }
      queue.shift()
      setProblem(null)
    }
  }

  function start() {
    callOffRetry?.()
    callOffRetry = null
    working ??= work().finally(() => {
      working = null
      // A write that was put while the last one settled.
      if (queue.length > 0 && callOffRetry === null && !closed) start()
    })
  }

  async function drained() {
    if (queue.length > 0) start()
    while (working !== null) await working
    if (problem !== null && queue.length > 0) throw new Trouble(problem.code, problem.message, problem.hint)
  }

  return {
    put(write) {
      if (closed) throw new TypeError('put requires an outbox that is open')
      queue.push(write)
      if (callOffRetry === null) start()
    },
    drained,
    async close() {
      closed = true
      await drained()
    },
  }
}
