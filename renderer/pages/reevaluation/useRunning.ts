// Held by tests/browser/reevaluationRun.spec.ts.
import { useState } from 'react'
import type { ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import type { Progress, TaskName } from '#contract/tasks.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { useEvent } from '../../host/useEvent.ts'

/** The task that evaluates in the background. */
export const reevaluationTask: TaskName = 'reevaluation'

/** How many breaks of a re-evaluation are done: as the program says while it runs, else as it was recorded. */
export function useDone(summary: ReevaluationSummary | null): number {
  const [heard, setHeard] = useState<Progress | null>(null)
  useEvent('task.progress', (progress) => progress.task === reevaluationTask && setHeard(progress))
  if (summary === null) return 0
  return summary.end === null && heard !== null ? Math.max(heard.done, summary.evaluated) : summary.evaluated
}

/** The re-evaluation that runs now, or null. What is wrong with the list says the page of the list; then nothing is known to run. */
export function useRunning(): ReevaluationSummary | null {
  const { value, error } = useAnswer('reevaluations.list', {})
  return error === null ? (value?.rows.find(({ end }) => end === null) ?? null) : null
}
