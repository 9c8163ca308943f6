import { createContext, useContext } from 'react'
import type { Host } from '../../host/hostConnection.ts'
import { leadS, situationOf } from '../../plots/live/liveView.ts'
import { createSampleRing, type SampleRing } from '../../plots/live/sampleRing.ts'

/** What arrived lately, kept while the person looks at another page: the curve is still there when they come back. */
export type LiveHistory = {
  readonly ring: SampleRing
  /** Stream time at which the running or just ended capture comes into view; null when there is none. */
  captureFromS(): number | null
}

/** About a minute and a half of frames at their fullest. */
const ringCapacity = 1 << 18

/** Listens for as long as the page is open. Must be made before any plot listens, so that the ring is filled first. */
export function keepLiveHistory({ client, bench }: Pick<Host, 'client' | 'bench'>): LiveHistory {
  const ring = createSampleRing(ringCapacity)
  let fromS: number | null = null
  let unitBefore: 'N' | 'counts' = 'N'
  let situationBefore: ReturnType<typeof situationOf> = 'rolling'
  const latestS = () => (ring.length > 0 ? ring.timeAt(ring.length - 1) : 0)

  client.on('live.frame', ({ timeS, force, unit, loadRange }) => {
    if (unit !== unitBefore) ring.clear()
    unitBefore = unit
    ring.push(timeS, force, loadRange)
    if (fromS !== null && latestS() < fromS) fromS = null
  })
  bench.subscribe(() => {
    const situation = situationOf(bench.get()?.phase ?? 'no-signal')
    if (situation === 'rolling') fromS = null
    else if (situation === 'capturing' && situationBefore !== 'capturing') fromS = latestS() - leadS
    situationBefore = situation
  })
  return { ring, captureFromS: () => fromS }
}

export const LiveHistoryContext = createContext<LiveHistory | null>(null)

/** The live history of the page. */
export function useLiveHistory(): LiveHistory {
  const history = useContext(LiveHistoryContext)
  if (history === null) throw new TypeError('useLiveHistory requires a LiveHistoryContext above it')
  return history
}
