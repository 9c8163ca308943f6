// Held by tests/browser/liveBreak.spec.ts.
import { useEffect, useState } from 'react'
import type { LiveFrame } from '#contract/bench/bench.ts'
import { useHost } from '../../../host/hostContext.ts'

export type LiveReading = Pick<LiveFrame, 'latest' | 'peak' | 'unit'>

/** A numeral that changes more often than this cannot be read, ms. */
const everyMs = 100

/** The newest force, at a pace that can be read. */
export function useLiveReading(): LiveReading {
  const { client } = useHost()
  const [reading, setReading] = useState<LiveReading>({ latest: null, peak: null, unit: 'N' })
  useEffect(() => {
    let newest: LiveReading | null = null
    let timer: ReturnType<typeof setTimeout> | null = null
    const show = () => {
      timer = null
      if (newest !== null) setReading(newest)
    }
    const end = client.on('live.frame', ({ latest, peak, unit }) => {
      newest = { latest, peak, unit }
      if (timer === null) timer = setTimeout(show, everyMs)
    })
    return () => {
      end()
      if (timer !== null) clearTimeout(timer)
    }
  }, [client])
  return reading
}
