import type { Clock } from '#acquisition/clock.ts'
import { Trouble, type TroubleCode, type TroubleMessage, troubleFrom } from '#contract/errors.ts'

/** Writes that must reach the archive one after the other. */
export type Outbox = {
  /**
   * Puts a write at the end of the queue; what it wrote half is the archive's to undo. Writes of one `lane` build on one
   * another: while one of them is set aside, so are those after it.
   */
  put(write: () => Promise<void>, lane?: object): void
  /**
   * Tries once more what was set aside, and resolves when nothing is left: of that lane, or without one of any. Rejects when
   * the archive still refuses; what it refuses is kept.
   */
  drained(lane?: object): Promise<void>
  /** As `drained` of any lane, and takes nothing further. */
  close(): Promise<void>
}

export type OutboxOptions = {
  clock: Clock
  retryAfterS?: number
  /** null: all is written or on its way. Called when that changes, not on every attempt. */
  onProblem(problem: TroubleMessage | null): void
}

/** What a person can mend while the program runs: the queue waits for it. Whatever else is refused will be refused again. */
const passing: ReadonlySet<TroubleCode> = new Set([
  'disk-full',
  'archive-read-only',
  'archive-in-use',
  'archive-missing',
])

type Entry = { write: () => Promise<void>; lane: object }
type Refused = Entry & { problem: TroubleMessage }

/** What is said where the program ends with writes that the archive refuses to the last. */
function notKept(thrown: unknown, writes: number): Trouble {
  const { code, message, hint } = troubleFrom(thrown)
  return new Trouble(
    code,
    `${message} What came since then is not kept: ${writes} ${writes === 1 ? 'write was' : 'writes were'} still waiting when the program ended.`,
    hint,
  )
}

/**
 * An ordered queue of writes. When the disk is full or the archive is held by somebody else, the queue waits in memory and
 * tries again. A write that is refused for another reason is told, set aside with its lane and tried once more when the
 * queue is drained, so that one break that cannot be stored does not keep the next ones from the disk. Nothing is lost
 * unless the program itself ends.
 */
export function createOutbox({ clock, retryAfterS = 2, onProblem }: OutboxOptions): Outbox {
  const queue: Entry[] = []
  let aside: Refused[] = []
  let working: Promise<void> | null = null
  let blocked: TroubleMessage | null = null
  let told: TroubleMessage | null = null
  let callOffRetry: (() => void) | null = null
  let closed = false

  function tell() {
    const problem = blocked ?? aside[0]?.problem ?? null
    if (problem?.code === told?.code && problem?.message === told?.message) return
    told = problem
    onProblem(problem)
  }

  async function work() {
    while (queue.length > 0) {
      const entry = queue[0]!
      const before = aside.find(({ lane }) => lane === entry.lane)
      try {
        if (before === undefined) await entry.write()
        else aside.push({ ...entry, problem: before.problem })
        blocked = null
      } catch (thrown) {
        const problem = troubleFrom(thrown)
        if (passing.has(problem.code)) {
          blocked = problem
          tell()
          if (!closed) callOffRetry = clock.after(retryAfterS, start)
          return
        }
        aside.push({ ...entry, problem })
      }
      queue.shift()
      tell()
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

  async function drained(lane?: object) {
    const isOfLane = (entry: Entry) => lane === undefined || entry.lane === lane
    // A write that runs may yet be set aside.
    while (working !== null) await working
    queue.unshift(...aside.filter(isOfLane))
    aside = aside.filter((entry) => !isOfLane(entry))
    if (queue.length > 0) start()
    while (working !== null) await working
    tell()
    const problem = (queue.some(isOfLane) ? blocked : null) ?? aside.find(isOfLane)?.problem
    if (problem != null) throw new Trouble(problem.code, problem.message, problem.hint)
  }

  return {
    put(write, lane = {}) {
      if (closed) throw new TypeError('put requires an outbox that is open')
      queue.push({ write, lane })
      if (callOffRetry === null) start()
    },
    drained,
    async close() {
      closed = true
      try {
        await drained()
      } catch (thrown) {
        throw notKept(thrown, queue.length + aside.length)
      }
    },
  }
}
