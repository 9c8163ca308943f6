import { useEffect, useState } from 'react'
import type { ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import type { Progress } from '#contract/tasks.ts'
import { useHost, useStore } from '../../host/hostContext.ts'
import { useEvent } from '../../host/useEvent.ts'

/** The task that evaluates in the background, as the program calls it. */
export const reevaluationTask = 'reevaluation'

/** How many breaks of a re-evaluation are done: as the program says while it runs, else as it was recorded. */
export function useDone(summary: ReevaluationSummary | null): number {
  const [heard, setHeard] = useState<Progress | null>(null)
  useEvent('task.progress', (progress) => progress.task === reevaluationTask && setHeard(progress))
  if (summary === null) return 0
  return summary.end === null && heard !== null ? Math.max(heard.done, summary.evaluated) : summary.evaluated
}

/**
 * The re-evaluation that runs now, or null. Asked for only when re-evaluations changed or the host came back: every page
 * shows it, and a capture must not wait for the list after each break.
 */
export function useRunning(): ReevaluationSummary | null {
  const { client, link } = useHost()
  const state = useStore(link)
  const [running, setRunning] = useState<ReevaluationSummary | null>(null)
  const [changes, setChanges] = useState(0)
  useEvent('reevaluations.changed', () => setChanges((before) => before + 1))
  useEffect(() => {
    if (state !== 'connected') return
    let current = true
    client.call('reevaluations.list', {}).then(
      (list) => current && setRunning(list.find(({ end }) => end === null) ?? null),
      // The page of the list says what is wrong with it; here nothing is known to run.
      () => current && setRunning(null),
    )
    return () => {
      current = false
    }
  }, [client, state, changes])
  return running
}
