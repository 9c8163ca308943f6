import { ofWords } from '#words/units/counts.ts'
import { useAction } from '../../host/useAction.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { reevaluationTask } from './useRunning.ts'
import './runningProgress.css'

/** How far it is, and a way to stop it. */
export function RunningProgress({ done, total }: { done: number; total: number }) {
  const cancel = useAction('task.cancel')
  return (
    <section className="running-progress" aria-label="Progress">
      <div className="running-line">
        <progress aria-label="Breaks evaluated" max={total} value={done} />
        <span>{ofWords(done, total)}</span>
        <button
          type="button"
          className="button"
          aria-disabled={cancel.pending}
          onClick={() => void cancel.run({ task: reevaluationTask })}
        >
          Cancel
        </button>
      </div>
      <p className="prose">
        The bench goes on recording meanwhile, and you may leave this page: the top line shows how far it is. Results
        finished when you cancel are kept, but do not count.
      </p>
      <Notice trouble={cancel.error} onDismiss={cancel.dismiss} />
    </section>
  )
}
