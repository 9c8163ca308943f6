import { useState } from 'react'
import type { Progress, TaskName } from '#contract/tasks.ts'
import { ofWords } from '#words/units/counts.ts'
import { useAction } from '../../host/useAction.ts'
import { useEvent } from '../../host/useEvent.ts'
import './taskProgress.css'

/** How far a task is that a dialog waits for, and a way to stop it; nothing until it tells. `label`: what is counted. */
export function TaskProgress({ task, label }: { task: TaskName; label: string }) {
  const cancel = useAction('task.cancel')
  const [progress, setProgress] = useState<Progress | null>(null)
  useEvent('task.progress', (next) => next.task === task && setProgress(next))
  if (progress === null) return null
  return (
    <p className="task-progress" role="status">
      <progress aria-label={label} max={progress.total} value={progress.done} />
      <span>{ofWords(progress.done, progress.total)}</span>
      <button type="button" className="button" onClick={() => void cancel.run({ task })}>
        Stop
      </button>
    </p>
  )
}
