import type { Clock } from '#acquisition/clock.ts'

/** A clock that somebody steps, for work that plays at another time than now. */
export type SteppedClock = Clock & {
  /** Moves on and calls back in order what falls due. */
  step(seconds: number): void
}

/**
 * Stands at that instant of the calendar (ms since 1970, UTC) until it is stepped. `pace`: calendar seconds that go by in a
 * second of the clock.
 */
export function createSteppedClock(startMs: number, pace = 1): SteppedClock {
  let nowS = 0
  let waiting: { dueS: number; call: () => void }[] = []
  return {
    nowS: () => nowS,
    instant: () => new Date(startMs + Math.round(nowS * pace * 1000)).toISOString(),
    after(seconds, call) {
      const entry = { dueS: nowS + seconds, call }
      waiting.push(entry)
      return () => {
        waiting = waiting.filter((other) => other !== entry)
      }
    },
    step(seconds) {
      const untilS = nowS + seconds
      for (;;) {
        let first: (typeof waiting)[number] | undefined
        for (const entry of waiting) if (entry.dueS <= untilS && (!first || entry.dueS < first.dueS)) first = entry
        if (first === undefined) break
        const due = first
        waiting = waiting.filter((other) => other !== due)
        nowS = Math.max(nowS, due.dueS)
        due.call()
      }
      nowS = untilS
    },
  }
}
