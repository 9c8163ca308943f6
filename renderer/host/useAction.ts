// Held by tests/browser/bothHosts.spec.ts.
import { useCallback, useRef, useState } from 'react'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { InputOf, OutputOf, ProcedureName } from '#contract/procedures.ts'
import { useHost } from './hostContext.ts'
import type { Answer } from './useAnswer.ts'

export type Action<N extends ProcedureName> = Answer<OutputOf<N>> & {
  /** Resolves with the answer, or null when there is an error, which then stands in `error`. Never rejects. */
  run(input: InputOf<N>): Promise<OutputOf<N> | null>
  dismiss(): void
}

/** Something the person can do: run it, and see whether it is under way, done, or in trouble. */
export function useAction<N extends ProcedureName>(name: N): Action<N> {
  const { client } = useHost()
  const [answer, setAnswer] = useState<Answer<OutputOf<N>>>({ value: null, error: null, pending: false })
  const turn = useRef(0)

  const run = useCallback(
    async (input: InputOf<N>): Promise<OutputOf<N> | null> => {
      const mine = ++turn.current
      setAnswer((before) => ({ ...before, error: null, pending: true }))
      try {
        const value = await client.call(name, input)
        if (mine === turn.current) setAnswer({ value, error: null, pending: false })
        return value
      } catch (thrown) {
        const error: TroubleMessage = troubleFrom(thrown)
        if (mine === turn.current) setAnswer((before) => ({ ...before, error, pending: false }))
        return null
      }
    },
    [client, name],
  )
  const dismiss = useCallback(() => setAnswer((before) => ({ ...before, error: null })), [])
  return { ...answer, run, dismiss }
}
