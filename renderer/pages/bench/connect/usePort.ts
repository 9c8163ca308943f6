// Held by tests/browser/everyScreen.spec.ts.
import { useState } from 'react'
import type { LineFormatChoice, SourceChoice } from '#contract/bench/source.ts'
import type { OutputOf } from '#contract/procedures.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'

type SerialSource = Extract<SourceChoice, { kind: 'serial' }>

/** How long a port is listened to, s. */
export const listenS = 3

/** Which port, how fast, and what its lines are: as chosen so far, with what listening to it proposes. */
export function usePort(before: SerialSource | null) {
  const [path, setPath] = useState(before?.path ?? '')
  const [baudRate, setBaudRate] = useState(before?.baudRate ?? 115200)
  const [lineFormat, setLineFormat] = useState<LineFormatChoice>(before?.lineFormat ?? { name: 'number', columns: [] })
  const [lookedAgain, setLookedAgain] = useState(false)
  const firstPorts = useAnswer('ports.list', {})
  const ports = useAction('ports.list')
  const listen = useAction('ports.listen')
  const found: OutputOf<'ports.list'> = (lookedAgain ? ports.value : firstPorts.value) ?? []
  const chosen = path === '' ? (found[0]?.path ?? '') : path
  return {
    found,
    /** The path that is chosen: the first port's until one is; '' where there is none. */
    chosen,
    baudRate,
    lineFormat,
    heard: listen.value,
    looking: firstPorts.pending || ports.pending,
    lookingAgain: ports.pending,
    listening: listen.pending,
    error: firstPorts.error ?? ports.error ?? listen.error,
    source: (): SerialSource => ({ kind: 'serial', path: chosen, baudRate, lineFormat }),
    setPath,
    setBaudRate,
    setLineFormat,
    lookAgain() {
      setLookedAgain(true)
      void ports.run({})
    },
    async hear() {
      const heard = await listen.run({ path: chosen, baudRate, seconds: listenS })
      if (heard?.proposal) setLineFormat(heard.proposal)
    },
  }
}

export type Port = ReturnType<typeof usePort>
