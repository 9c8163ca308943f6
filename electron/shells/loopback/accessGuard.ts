import { createHash, timingSafeEqual } from 'node:crypto'
import type { IncomingMessage } from 'node:http'

/** What the guard looks at; undefined where the browser sent nothing. */
export type AccessRequest = {
  method: string | undefined
  /** The request target as sent: path and query. */
  target: string | undefined
  host: string | undefined
  origin: string | undefined
  cookie: string | undefined
  /** What the tab says of itself: the words of the WebSocket's subprotocol, or of the header of that name. */
  tab: string | undefined
}

/** What the guard looks at of a request. */
export const accessOf = ({ method, url, headers }: IncomingMessage): AccessRequest => ({
  method,
  target: url,
  host: headers.host,
  origin: headers.origin,
  cookie: headers.cookie,
  tab: headers['sec-websocket-protocol'] ?? textOf(headers[tabHeader]),
})

/**
 * What the guard knows, all of it long random texts but the port. `ticket` is in the printed address and is exchanged once,
 * for `session`, which goes into the cookie, and `tab`, which the page keeps: a browser sends the cookie to every server on
 * this computer, whatever its port, but what a page has stored it shows to no other port.
 */
export type AccessSecrets = { port: number; ticket: string; ticketUsed: boolean; session: string; tab: string }

/**
 * page: serve that path. exchange: the ticket was right; serve the page with both secrets. admitted: a tab that asks why its
 * connection fails would be let in.
 */
export type PageDecision = { kind: 'page'; path: string } | { kind: 'exchange' } | { kind: 'admitted' } | Refusal
export type UpgradeDecision = { kind: 'join' } | Refusal
export type Refusal = { kind: 'refuse'; status: 400 | 403 | 405; because: string }

/** Where the page's WebSocket connects, and where a page that could not connect asks why. */
export const socketPath = '/socket'

/** The subprotocol that the program speaks; the tab's secret stands behind it. */
export const socketProtocol = 'breakledger'

const tabHeader = 'x-breakledger-tab'

/** Cookies do not know ports, so the name holds it: two programs on one machine do not log each other out. */
export const cookieName = (port: number): string => `breakledger-${port}`

const refuse = (status: Refusal['status'], because: string): Refusal => ({ kind: 'refuse', status, because })

/**
 * May this request see the page? The Host must be ours (else a rebound name leads a foreign page here), a foreign Origin is
 * refused, and either the session cookie or the unused ticket must be there.
 */
export function judgePage(request: AccessRequest, secrets: AccessSecrets): PageDecision {
  if (request.method !== 'GET' && request.method !== 'HEAD') return onlyGet()
  const foreign = judgeHost(request, secrets)
  if (foreign !== null) return foreign
  if (request.origin !== undefined && request.origin !== ownOrigin(secrets.port))
    return refuse(403, 'A page of another origin may not read this one.')
  const address = parseTarget(request.target, secrets.port)
  if (address === null) return refuse(400, 'The address cannot be read.')
  const path = address.pathname
  if (path === socketPath) return judgeSession(request, secrets) ?? { kind: 'admitted' }
  const ticket = path === '/' ? address.searchParams.get('token') : null
  if (ticket !== null && !secrets.ticketUsed && sameSecret(ticket, secrets.ticket))
    // Whoever asks for the headers alone has not opened the page.
    return request.method === 'GET' ? { kind: 'exchange' } : { kind: 'page', path }
  return judgeCookie(request, secrets) ?? { kind: 'page', path }
}

/** May this request become the page's WebSocket? Unlike a page, an upgrade must name our Origin, and only cookie and tab's secret together open it. */
export function judgeUpgrade(request: AccessRequest, secrets: AccessSecrets): UpgradeDecision {
  if (request.method !== 'GET') return onlyGet()
  const foreign = judgeHost(request, secrets)
  if (foreign !== null) return foreign
  if (request.origin !== ownOrigin(secrets.port)) return refuse(403, 'The connection must come from our own page.')
  if (parseTarget(request.target, secrets.port)?.pathname !== socketPath)
    return refuse(400, `The connection is at ${socketPath}.`)
  return judgeSession(request, secrets) ?? { kind: 'join' }
}

/** The one origin that belongs to us. */
export const ownOrigin = (port: number): string => `http://127.0.0.1:${port}`

function judgeSession(request: AccessRequest, secrets: AccessSecrets): Refusal | null {
  const badCookie = judgeCookie(request, secrets)
  if (badCookie !== null) return badCookie
  const words = (request.tab ?? '').split(',').map((word) => word.trim())
  if (words.length === 2 && words[0] === socketProtocol && sameSecret(words[1]!, secrets.tab)) return null
  return refuse(
    403,
    'This tab was not opened by the address that Breakledger printed. Go on in the tab that was, or end Breakledger and start it again for a new address.',
  )
}

function judgeCookie({ cookie }: AccessRequest, secrets: AccessSecrets): Refusal | null {
  const wanted = `${cookieName(secrets.port)}=`
  const values = (cookie ?? '').split(';').map((pair) => pair.trim())
  const own = values.filter((pair) => pair.startsWith(wanted)).map((pair) => pair.slice(wanted.length))
  // Two cookies of our name: somebody else's program wrote one of them; which is ours cannot be told.
  if (own.length === 1 && sameSecret(own[0]!, secrets.session)) return null
  return own.length === 0
    ? refuse(
        403,
        'The address of Breakledger works once, in one browser, and this browser has not opened it. Open the address that Breakledger printed when it started. If it was used already and not by you, another program on this computer may have used it: end Breakledger and start it again.',
      )
    : refuse(
        403,
        'Another program on this computer, or an earlier start of this one, has left a cookie under the name of ours, so Breakledger cannot tell that this is your browser. Delete the cookies of 127.0.0.1 in this browser, then end Breakledger, start it again and open the new address.',
      )
}

function judgeHost(request: AccessRequest, secrets: AccessSecrets): Refusal | null {
  if (request.host === `127.0.0.1:${secrets.port}`) return null
  return refuse(403, `The address must begin with ${ownOrigin(secrets.port)}.`)
}

function parseTarget(target: string | undefined, port: number): URL | null {
  // "//host/path" and "http://host/path" are addresses of other hosts, not paths.
  if (target === undefined || !target.startsWith('/') || target.startsWith('//')) return null
  const address = URL.parse(target, ownOrigin(port))
  // A path that the parser rewrites ("/..", "\", control characters) is not one of ours.
  return address !== null && address.pathname === target.split(/[?#]/, 1)[0] ? address : null
}

/** Compares in a time that tells nothing of where the texts differ. */
function sameSecret(given: string, wanted: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest()
  return timingSafeEqual(digest(given), digest(wanted))
}

const textOf = (value: string | string[] | undefined) => (typeof value === 'string' ? value : undefined)

const onlyGet = () => refuse(405, 'Only GET is answered here.')
