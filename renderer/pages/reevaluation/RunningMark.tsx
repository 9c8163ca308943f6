import { ofWords } from '#words/units/counts.ts'
import { percentWords } from '#words/units/numbers.ts'
import { hashOf, type Route } from '../../routes/route.ts'
import { useDone, useRunning } from './useRunning.ts'
import './runningMark.css'

/** Says on every other page that breaks are being evaluated in the background, and how far that is. */
export function RunningMark({ route }: { route: Route }) {
  const running = useRunning()
  const done = useDone(running)
  if (running === null) return null
  const { reevaluationId, breaks } = running
  const share = breaks === 0 ? 0 : done / breaks
  if (route.page === 'reevaluation' && route.reevaluationId === reevaluationId) return null
  return (
    <a className="running-mark" href={hashOf({ page: 'reevaluation', reevaluationId })} title="Re-evaluation">
      <svg className="running-mark-ring" viewBox="0 0 20 20" aria-hidden="true">
        <circle cx="10" cy="10" r="7" pathLength="1" />
        <circle cx="10" cy="10" r="7" pathLength="1" strokeDasharray={`${share} 1`} />
      </svg>
      <span className="running-mark-words">Evaluating {ofWords(done, breaks)}</span>
      <span className="running-mark-percent">{percentWords(Math.floor(100 * share))}</span>
    </a>
  )
}
