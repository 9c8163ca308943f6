// Held by tests/browser/calibrationRun.spec.ts.
import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { lastTaken } from '#domain/calibration/routinePlace.ts'
import { useAction } from '../../../host/useAction.ts'

/** The steps that a person takes through the routine, by button or by key. */
export function useRoutineSteps(state: RoutineState) {
  const goOn = useAction('calibration.goOn')
  const stop = useAction('calibration.stopWaiting')
  const repeat = useAction('calibration.repeat')
  const back = useAction('calibration.back')
  const skip = useAction('calibration.skip')
  const reading = state.phase === 'waiting-for-steady' || state.phase === 'averaging' || state.phase === 'holding'
  const repeatable = reading ? null : lastTaken(state)
  const steps = {
    goOn: () => void goOn.run({}),
    stop: () => void stop.run({}),
    repeat: (position: number) => void repeat.run({ position }),
    back: () => void back.run({}),
    skip: () => void skip.run({}),
  }
  return {
    ...steps,
    /** A reading is being taken or waited for. */
    reading,
    /** The step that can be read once more; null: none. */
    repeatable,
    pending: goOn.pending,
    error: goOn.error ?? stop.error ?? repeat.error ?? back.error ?? skip.error,
    /** Acts on a key as the help says; true when it was one of the routine's, even if it has nothing to do now. */
    key(key: string): boolean {
      if (key === 'Enter') {
        if (!reading && !state.reversed) steps.goOn()
      } else if (key === 'Escape') {
        if (reading) steps.stop()
      } else if (key === 'Backspace') {
        if (!reading) steps.back()
      } else if (key.toLowerCase() === 'r') {
        if (repeatable !== null) steps.repeat(repeatable)
      } else if (key.toLowerCase() === 'n') {
        if (!reading) steps.skip()
      } else return false
      return true
    },
  }
}

export type RoutineSteps = ReturnType<typeof useRoutineSteps>
