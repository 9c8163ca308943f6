import { useEffect, useRef } from 'react'
import type { EventName, PayloadOf } from '#contract/events.ts'
import { useHost } from './hostContext.ts'

/** Hears every event of that name for as long as the component is there. */
export function useEvent<N extends EventName>(name: N, listener: (payload: PayloadOf<N>) => void): void {
  const { client } = useHost()
  const latest = useRef(listener)
  latest.current = listener
  useEffect(() => client.on(name, (payload) => latest.current(payload)), [client, name])
}
