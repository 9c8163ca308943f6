import { ofWords } from '#words/units/counts.ts'
import { hashOf, type Route } from '../../routes/route.ts'
import { useDone, useRunning } from './useRunning.ts'
import './runningMark.css'

/** Says on every other page that breaks are being evaluated in the background, and how far that is. */
export function RunningMark({ route }: { route: Route }) {
  const running = useRunning()
  const done = useDone(running)
  if (running === null) return null
  const { reevaluationId, breaks } = running
  if (route.page === 'reevaluation' && route.reevaluationId === reevaluationId) return null
  return (
    <a className="running-mark" href={hashOf({ page: 'reevaluation', reevaluationId })} title="Re-evaluation">
      <svg className="running-mark-ring" viewBox="0 0 20 20" aria-hidden="true">
        <circle cx="10" cy="10" r="7" pathLength="1" />
        <circle cx="10" cy="10" r="7" pathLength="1" strokeDasharray={`${breaks === 0 ? 0 : done / breaks} 1`} />
      </svg>
      <span>Evaluating {ofWords(done, breaks)}</span>
    </a>
  )
}
