import type { Handlers } from '#contract/procedures.ts'
import type { Engine } from '#engine/core/engine.ts'

type Carried = Pick<Engine, 'handlers' | 'subscribe'>

/** The same engine, with an account of who was asked for what. */
export type CountedEngine = Carried & {
  /** Calls of each procedure since this was asked last; one that was not called is left out. */
  counts(): Record<string, number>
  /** All calls so far. */
  total(): number
  /** Calls that are not answered yet. */
  waiting(): number
}

/** Counts the calls of one carrier; several may stand before one engine. */
export function countedEngine({ handlers, subscribe }: Carried): CountedEngine {
  let counts: Record<string, number> = {}
  let total = 0
  let waiting = 0
  const counted = Object.entries(handlers).map(([name, handle]) => [
    name,
    async (input: never) => {
      counts[name] = (counts[name] ?? 0) + 1
      total++
      waiting++
      try {
        return await (handle as (input: never) => Promise<unknown>)(input)
      } finally {
        waiting--
      }
    },
  ])
  return {
    subscribe,
    handlers: Object.fromEntries(counted) as Handlers,
    counts() {
      const before = counts
      counts = {}
      return before
    },
    total: () => total,
    waiting: () => waiting,
  }
}
