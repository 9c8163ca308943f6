import { desktopCarrier } from './desktopBridge.ts'
import { type Host, joinHost } from './hostConnection.ts'
import { createReconnectingCarrier } from './reconnectingCarrier.ts'

/** Connects to whichever shell is there: the desktop's bridge, else the server that this page came from. */
export function connectHost(): Host {
  const desktop = desktopCarrier()
  if (desktop !== null) return joinHost(desktop, (change) => change('connected'))
  const address = new URL('/socket', location.href)
  address.protocol = address.protocol === 'https:' ? 'wss:' : 'ws:'
  const { carrier, watchLink } = createReconnectingCarrier({
    open: () => new WebSocket(address),
    after: (seconds, call) => void setTimeout(call, seconds * 1000),
  })
  return joinHost(carrier, watchLink)
}
