import { useEffect, useState } from 'react'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { InputOf, OutputOf, ProcedureName } from '#contract/procedures.ts'
import { useHost, useStore } from './hostContext.ts'

export type Answer<T> = { value: T | null; error: TroubleMessage | null; pending: boolean }

/**
 * The answer to a question, asked again when the question changes or records change. The answer before stays until the new
 * one is there. Never throws. `input` null: nothing is asked.
 */
export function useAnswer<N extends ProcedureName>(name: N, input: InputOf<N> | null): Answer<OutputOf<N>> {
  const { client, recordsVersion } = useHost()
  const version = useStore(recordsVersion)
  const question = input === null ? null : JSON.stringify(input)
  const [answer, setAnswer] = useState<Answer<OutputOf<N>>>({ value: null, error: null, pending: question !== null })

  // Asked again whenever records change
  useEffect(() => {
    if (question === null) return
    let current = true
    setAnswer((before) => ({ ...before, pending: true }))
    client.call(name, JSON.parse(question) as InputOf<N>).then(
      (value) => current && setAnswer({ value, error: null, pending: false }),
      (thrown: unknown) =>
        current && setAnswer((before) => ({ value: before.value, error: troubleFrom(thrown), pending: false })),
    )
    return () => {
      current = false
    }
  }, [client, name, question, version])

  return answer
}
