// Held by tests/browser/breaks/compareRun.spec.ts.
import { useCallback, useEffect, useRef, useState } from 'react'
import type { Comparison, ComparisonRequest } from '#contract/breaks/comparison.ts'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { Progress, TaskName } from '#contract/tasks.ts'
import { topicsRead } from '../../../host/changes.ts'
import { useHost } from '../../../host/hostContext.ts'
import { useEvent } from '../../../host/useEvent.ts'

const task: TaskName = 'comparison'

export type ComparisonState = {
  /** The last one that came out; it stays in sight while another is made. */
  value: Comparison | null
  error: TroubleMessage | null
  pending: boolean
  progress: Progress | null
  cancel(): void
  again(): void
}

/**
 * A comparison, made anew when the question changes or what it reads was written; one that still runs for an older question
 * is stopped first.
 */
export function useComparison(request: ComparisonRequest): ComparisonState {
  const { client, changes } = useHost()
  const question = JSON.stringify(request)
  const [state, setState] = useState<Omit<ComparisonState, 'progress' | 'cancel' | 'again'>>({
    value: null,
    error: null,
    pending: true,
  })
  const [progress, setProgress] = useState<Progress | null>(null)
  const [attempt, setAttempt] = useState(0)
  const running = useRef<Promise<unknown>>(Promise.resolve())
  useEvent('task.progress', (next) => next.task === task && setProgress(next))

  const again = useCallback(() => setAttempt((before) => before + 1), [])
  useEffect(
    () => changes.follow(topicsRead('comparison.make', JSON.parse(question)), again),
    [changes, question, again],
  )

  // Made anew for another question, what was written, or when the person asks
  useEffect(() => {
    let current = true
    let under = false
    setState((before) => ({ ...before, error: null, pending: true }))
    setProgress(null)
    running.current = running.current.then(async () => {
      if (!current) return
      under = true
      try {
        const value = await client.call('comparison.make', JSON.parse(question) as ComparisonRequest)
        if (current) setState({ value, error: null, pending: false })
      } catch (thrown) {
        if (current) setState((before) => ({ ...before, error: troubleFrom(thrown), pending: false }))
      } finally {
        under = false
      }
    })
    return () => {
      current = false
      if (under) void client.call('task.cancel', { task }).catch(() => false)
    }
  }, [client, question, attempt])

  const cancel = useCallback(() => {
    // A task that has just ended needs no stopping; trouble with the program is told by the call that waits.
    void client.call('task.cancel', { task }).catch(() => false)
  }, [client])
  return { ...state, progress, cancel, again }
}
