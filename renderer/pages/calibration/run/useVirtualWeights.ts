// Held by tests/browser/everyScreen.spec.ts.
import { useState } from 'react'
import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { heaviestPosition, positionAtHand } from '#domain/calibration/routinePlace.ts'
import { useAction } from '../../../host/useAction.ts'

/** Weights on the virtual cell: what the routine asks for, what hangs, and hanging it. Forces in N. */
export function useVirtualWeights(state: RoutineState) {
  const put = useAction('bench.putVirtualWeights')
  const [hungN, setHungN] = useState(0)
  const preloading = state.phase === 'preloading'
  const askedN = (preloading ? heaviestPosition(state) : positionAtHand(state))?.forceN ?? 0

  async function hang(forceN: number): Promise<void> {
    if ((await put.run({ forceN })) !== null) setHungN(forceN)
  }
  return {
    askedN,
    hungN,
    pending: put.pending,
    error: put.error,
    /** Hangs what is asked for; while preloading it takes off again what hangs. */
    hangAsked: () => void hang(preloading && hungN > 0 ? 0 : askedN),
  }
}
