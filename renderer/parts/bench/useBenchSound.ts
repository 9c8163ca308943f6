// Held by tests/browser/keyboardRun.spec.ts.
import { useEffect, useRef } from 'react'
import type { BenchState } from '#contract/bench/bench.ts'
import { cueOf, playCue } from './benchSound.ts'

/** The alarm sounds again after so many ms for as long as the overload lasts. */
const alarmEveryMs = 900

/** Makes the bench heard, if the person wants it. */
export function useBenchSound(bench: BenchState, on: boolean): void {
  const before = useRef(bench)
  useEffect(() => {
    const cue = cueOf(before.current, bench)
    before.current = bench
    if (on && cue !== null) playCue(cue)
  }, [bench, on])
  useEffect(() => {
    if (!on || bench.overload !== 'alarm') return
    const timer = setInterval(() => playCue('alarm'), alarmEveryMs)
    return () => clearInterval(timer)
  }, [on, bench.overload])
}
