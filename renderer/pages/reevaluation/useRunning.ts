import { useState } from 'react'
import type { Progress } from '#contract/records/archive.ts'
import type { ReevaluationSummary } from '#contract/records/reevaluation.ts'
import { useAnswer } from '#renderer/host/useAnswer.ts'
import { useEvent } from '#renderer/host/useEvent.ts'

/** The task that evaluates in the background, as the program calls it. */
export const reevaluationTask = 'reevaluation'

/** How many breaks of a re-evaluation are done: as the program says while it runs, else as it was recorded. */
export function useDone(summary: ReevaluationSummary | null): number {
  const [heard, setHeard] = useState<Progress | null>(null)
  useEvent('task.progress', (progress) => progress.task === reevaluationTask && setHeard(progress))
  if (summary === null) return 0
  return summary.end === null && heard !== null ? Math.max(heard.done, summary.evaluated) : summary.evaluated
}

/** The re-evaluation that runs now, or null. */
export function useRunning(): ReevaluationSummary | null {
  const list = useAnswer('reevaluations.list', {})
  return list.value?.find(({ end }) => end === null) ?? null
}
