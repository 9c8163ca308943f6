// Held by tests/browser/callCounts.spec.ts.
import { useEffect, useState } from 'react'
import type { TroubleMessage } from '#contract/errors.ts'
import type { InputOf, OutputOf, QuestionName } from '#contract/procedures.ts'
import { useHost } from './hostContext.ts'
import { keepAnswer } from './keptAnswer.ts'

export type Answer<T> = { value: T | null; error: TroubleMessage | null; pending: boolean }

/**
 * The answer to a question, asked again when the question changes or what it reads was written. The answer before stays until
 * the new one is there. Never throws. `input` null: nothing is asked.
 */
export function useAnswer<N extends QuestionName>(name: N, input: InputOf<N> | null): Answer<OutputOf<N>> {
  const host = useHost()
  const question = input === null ? null : JSON.stringify(input)
  const [answer, setAnswer] = useState<Answer<OutputOf<N>>>({ value: null, error: null, pending: question !== null })

  useEffect(() => {
    if (question === null) return
    return keepAnswer(host, name, JSON.parse(question) as InputOf<N>, {
      asking: () => setAnswer((before) => ({ ...before, pending: true })),
      answered: (value) => setAnswer({ value, error: null, pending: false }),
      failed: (error) => setAnswer((before) => ({ value: before.value, error, pending: false })),
    })
  }, [host, name, question])

  return answer
}
