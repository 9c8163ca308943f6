import { Notice } from '../../../widgets/Notice.tsx'
import { PlanView } from '../plan/PlanView.tsx'
import { ReviewView } from '../review/ReviewView.tsx'
import { useRoutine } from './useRoutine.ts'
import { WorkView } from './WorkView.tsx'

/** The guided calibration: plan it, hang the weights one stack after another, look at the result. */
export function CalibrationRunPage() {
  const { state, error } = useRoutine()
  if (state === null)
    return (
      <div className="plain-page">
        <h1>Calibrate</h1>
        <Notice trouble={error} />
      </div>
    )
  if (state.phase === 'planning') return <PlanView />
  if (state.phase === 'review') return <ReviewView state={state} />
  return <WorkView state={state} />
}
