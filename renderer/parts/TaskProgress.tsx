import { useState } from 'react'
import type { Progress, TaskName } from '#contract/tasks.ts'
import { useAction } from '../host/useAction.ts'
import { useEvent } from '../host/useEvent.ts'
import './taskProgress.css'

/** How far a task is, and a way to stop it; `words` say it from what is known, null: nothing yet. */
export function TaskProgress({
  task,
  label,
  words,
}: {
  task: TaskName
  label: string
  words(progress: Progress | null): string
}) {
  const [progress, setProgress] = useState<Progress | null>(null)
  useEvent('task.progress', (next) => next.task === task && setProgress(next))
  const cancel = useAction('task.cancel')
  return (
    <p className="task-progress" role="status">
      <progress aria-label={label} max={progress?.total ?? 1} value={progress?.done ?? 0} />
      <span>{words(progress)}</span>
      <button type="button" className="button" onClick={() => void cancel.run({ task })}>
        Stop
      </button>
    </p>
  )
}
