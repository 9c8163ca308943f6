import type { Clock } from '#acquisition/clock.ts'

/** A clock that stands still until a test moves it. */
export type MovedClock = Clock & {
  /** Moves on, calling back in order what falls due; waits for what the callbacks set going. */
  move(seconds: number): Promise<void>
}

/** Starts at 0 s on an invented day. */
export function movedClock(startMs = Date.UTC(2031, 4, 6, 8)): MovedClock {
  let nowS = 0
  const waiting: { dueS: number; call: () => void }[] = []
  const settle = async () => {
    for (let i = 0; i < 20; i++) await Promise.resolve()
  }
  return {
    nowS: () => nowS,
    instant: () => new Date(startMs + Math.round(nowS * 1000)).toISOString(),
    after(seconds, call) {
      const entry = { dueS: nowS + seconds, call }
      waiting.push(entry)
      return () => {
        const at = waiting.indexOf(entry)
        if (at >= 0) waiting.splice(at, 1)
      }
    },
    async move(seconds) {
      const untilS = nowS + seconds
      await settle()
      for (;;) {
        const due = waiting.filter(({ dueS }) => dueS <= untilS).sort((a, b) => a.dueS - b.dueS)[0]
        if (due === undefined) break
        waiting.splice(waiting.indexOf(due), 1)
        nowS = Math.max(nowS, due.dueS)
        due.call()
        await settle()
      }
      nowS = untilS
      await settle()
    },
  }
}
