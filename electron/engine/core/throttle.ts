import type { Clock } from '#acquisition/clock.ts'

/** Lets a call through at most once in `everyS`: the first at once, the last of a burst when the time is over. */
export function throttle(clock: Clock, everyS: number, call: () => void): { ask(): void; stop(): void } {
  let lastS = Number.NEGATIVE_INFINITY
  let callOff: (() => void) | null = null
  function run() {
    callOff = null
    lastS = clock.nowS()
    call()
  }
  return {
    ask() {
      if (callOff !== null) return
      const waitS = lastS + everyS - clock.nowS()
      if (waitS <= 0) run()
      else callOff = clock.after(waitS, run)
    },
    stop() {
      callOff?.()
      callOff = null
    },
  }
}
