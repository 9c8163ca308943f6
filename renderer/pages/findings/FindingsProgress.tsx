import { useState } from 'react'
import type { Progress } from '#contract/tasks.ts'
import { ofWords } from '#words/units/counts.ts'
import { useAction } from '../../host/useAction.ts'
import { useEvent } from '../../host/useEvent.ts'

/** How far the working out is, and a way to stop it. */
export function FindingsProgress() {
  const [progress, setProgress] = useState<Progress | null>(null)
  useEvent('task.progress', (next) => next.task === 'findings' && setProgress(next))
  const cancel = useAction('task.cancel')
  return (
    <p className="findings-progress" role="status">
      <progress aria-label="Parts of the answer worked out" max={progress?.total ?? 1} value={progress?.done ?? 0} />
      <span>Working out {progress === null ? '' : ofWords(progress.done, progress.total)}</span>
      <button type="button" className="button" onClick={() => void cancel.run({ task: 'findings' })}>
        Stop
      </button>
    </p>
  )
}
