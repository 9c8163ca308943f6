// Held by tests/browser/hostLost.spec.ts.
import type { TroubleMessage } from '#contract/errors.ts'
import { desktopCarrier } from './desktopBridge.ts'
import { type Host, joinHost } from './hostConnection.ts'
import { createReconnectingCarrier } from './reconnectingCarrier.ts'
import { takeTabSecret } from './tabSecret.ts'

/** Connects to whichever shell is there: the desktop's bridge, else the server that this page came from. */
export function connectHost(): Host {
  const desktop = desktopCarrier()
  if (desktop !== null) return joinHost(desktop, (change) => change('connected'))
  const address = new URL('/socket', location.href)
  // The tab's secret goes along as a subprotocol, the one thing that a page may say when it opens a WebSocket.
  const words = ['breakledger', takeTabSecret() ?? 'none']
  const { carrier, watchLink } = createReconnectingCarrier({
    open: () => new WebSocket(address.href.replace('http', 'ws'), words),
    after: (seconds, call) => void setTimeout(call, seconds * 1000),
    refusal: () => refusalAt(address, words.join(', ')),
  })
  // Not with its hash, which names a record of the other archive; what is not saved is asked about first.
  return joinHost(carrier, watchLink, () => location.replace(location.pathname))
}

const answersWithinMs = 3000

/** Why the program does not let this page in, or null when it does, or is not there. A WebSocket itself is told no reason. */
async function refusalAt(address: URL, tab: string): Promise<TroubleMessage | null> {
  try {
    const answer = await fetch(address, {
      headers: { 'X-Breakledger-Tab': tab },
      signal: AbortSignal.timeout(answersWithinMs),
    })
    if (answer.ok) return null
    return {
      code: 'denied',
      message: 'Breakledger does not let this page in.',
      hint: (await answer.text()).trim(),
    }
  } catch {
    return null
  }
}
