// Held by tests/browser/calibrationRun.spec.ts.
import { useEffect, useState } from 'react'
import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useEvent } from '../../../host/useEvent.ts'

/** The guided routine as the program sees it, kept up to date; read again whenever the connection comes back. */
export function useRoutine(): { state: RoutineState | null; error: TroubleMessage | null } {
  const answer = useAnswer('calibration.state', {})
  const [state, setState] = useState<RoutineState | null>(null)
  useEffect(() => {
    if (answer.value !== null) setState(answer.value)
  }, [answer.value])
  useEvent('calibration.state', setState)
  return { state, error: answer.error }
}
