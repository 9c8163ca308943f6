import { useState } from 'react'
import type { SerialPortInfo } from '#contract/bench/bench.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'

/** The ports of the computer, as they were found when they were looked for last. */
export type FoundPorts = {
  ports: readonly SerialPortInfo[]
  pending: boolean
  error: TroubleMessage | null
  lookAgain(): void
}

/** Looks for ports at once, and again when asked to. */
export function usePorts(): FoundPorts {
  const [lookedAgain, setLookedAgain] = useState(false)
  const first = useAnswer('ports.list', {})
  const again = useAction('ports.list')
  return {
    ports: (lookedAgain ? again.value : first.value) ?? [],
    pending: first.pending || again.pending,
    error: first.error ?? again.error,
    lookAgain() {
      setLookedAgain(true)
      void again.run({})
    },
  }
}
