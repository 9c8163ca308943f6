import { useEffect, useRef, useState } from 'react'
import { useBench, useHost, usePreferences, useStore } from '../host/hostContext.ts'
import { keepLiveHistory, LiveHistoryContext } from '../parts/bench/liveHistory.ts'
import { go, useRoute } from '../parts/routing/useRoute.ts'
import { placeKeyOf } from '../routes/route.ts'
import { Notice } from '../widgets/Notice.tsx'
import { Frame } from './Frame.tsx'
import { PageAt } from './PageAt.tsx'

/** The program's page: waits for the host, then shows the place in the address. */
export function App() {
  const host = useHost()
  const bench = useStore(host.bench)
  const preferences = useStore(host.preferences)
  const trouble = useStore(host.trouble)
  const link = useStore(host.link)
  // Before any plot listens, so that the history has a frame before the plot draws it
  const [history] = useState(() => keepLiveHistory(host))
  if (bench === null || preferences === null)
    return (
      <main className="waiting-for-host">
        <h1>Breakledger</h1>
        {link === 'refused' ? null : <p aria-live="polite">Connecting to the program …</p>}
        <Notice trouble={trouble} />
      </main>
    )
  return (
    <LiveHistoryContext value={history}>
      <Connected />
    </LiveHistoryContext>
  )
}

function Connected() {
  const { source } = usePreferences()
  const bench = useBench()
  const route = useRoute()
  const isFirst = useRef(true)
  useEffect(() => {
    if (!isFirst.current) return
    isFirst.current = false
    if (route.page === 'bench' && source === null && bench.connection.status === 'closed') go({ page: 'connect' })
  }, [route.page, source, bench.connection.status])
  return (
    <Frame route={route}>
      <PageAt key={placeKeyOf(route)} route={route} />
    </Frame>
  )
}
