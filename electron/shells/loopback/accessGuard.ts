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
}

/** What the guard looks at of a request. */
export const accessOf = ({ method, url, headers }: IncomingMessage): AccessRequest => ({
  method,
  target: url,
  host: headers.host,
  origin: headers.origin,
  cookie: headers.cookie,
})

/** What the guard knows. `ticket` is in the printed address, `session` in the cookie; both are long random texts. */
export type AccessSecrets = { port: number; ticket: string | null; session: string }

/** page: serve that path. exchange: the ticket was right; hand out the cookie and go on to the clean address. */
export type PageDecision = { kind: 'page'; path: string } | { kind: 'exchange' } | Refusal
export type UpgradeDecision = { kind: 'join' } | Refusal
export type Refusal = { kind: 'refuse'; status: 400 | 403 | 405; because: string }

/** Where the page's WebSocket connects. */
export const socketPath = '/socket'

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
  const ticket = address.pathname === '/' ? address.searchParams.get('token') : null
  if (holdsSession(request.cookie, secrets))
    return ticket === null ? { kind: 'page', path: address.pathname } : { kind: 'exchange' }
  if (ticket !== null && secrets.ticket !== null && sameSecret(ticket, secrets.ticket)) return { kind: 'exchange' }
  return refuse(
    403,
    'This address works once, in one browser. Open the address that Breakledger printed when it started; if it was used already, start Breakledger again.',
  )
}

/** May this request become the page's WebSocket? Unlike a page, an upgrade must name our Origin, and only the cookie opens it. */
export function judgeUpgrade(request: AccessRequest, secrets: AccessSecrets): UpgradeDecision {
  if (request.method !== 'GET') return onlyGet()
  const foreign = judgeHost(request, secrets)
  if (foreign !== null) return foreign
  if (request.origin !== ownOrigin(secrets.port)) return refuse(403, 'The connection must come from our own page.')
  if (parseTarget(request.target, secrets.port)?.pathname !== socketPath)
    return refuse(400, `The connection is at ${socketPath}.`)
  if (!holdsSession(request.cookie, secrets)) return refuse(403, 'The connection needs the cookie of the page.')
  return { kind: 'join' }
}

/** The one origin that belongs to us. */
export const ownOrigin = (port: number): string => `http://127.0.0.1:${port}`

/** True when the request carries the session cookie: the browser has come back with what the ticket was exchanged for. */
export function holdsSession(cookie: string | undefined, secrets: AccessSecrets): boolean {
  const wanted = `${cookieName(secrets.port)}=`
  const values = (cookie ?? '').split(';').map((pair) => pair.trim())
  const own = values.filter((pair) => pair.startsWith(wanted)).map((pair) => pair.slice(wanted.length))
  // Two cookies of our name: somebody else's program wrote one of them; which is ours cannot be told.
  return own.length === 1 && sameSecret(own[0]!, secrets.session)
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

const onlyGet = () => refuse(405, 'Only GET is answered here.')
