import { describe, expect, test } from 'vitest'
import {
  type AccessRequest,
  type AccessSecrets,
  cookieName,
  judgePage,
  judgeUpgrade,
  socketPath,
} from '#shells/loopback/accessGuard.ts'

const secrets: AccessSecrets = {
  port: 4321,
  ticket: 'ticket-of-this-run',
  ticketUsed: false,
  session: 'session-of-this-run',
  tab: 'tab-of-this-run',
}
const cookie = `${cookieName(4321)}=session-of-this-run`
const page = (change: Partial<AccessRequest> = {}): AccessRequest => ({
  method: 'GET',
  target: '/',
  host: '127.0.0.1:4321',
  origin: undefined,
  cookie,
  tab: undefined,
  ...change,
})
const upgrade = (change: Partial<AccessRequest> = {}) =>
  page({ target: socketPath, origin: 'http://127.0.0.1:4321', tab: 'breakledger, tab-of-this-run', ...change })

const hostileHosts = [
  undefined,
  '',
  'localhost:4321',
  '127.0.0.1',
  '127.0.0.1:80',
  '127.0.0.1:4321.evil.example',
  'evil.example:4321',
  '127.0.0.1:4321@evil.example',
  '127.1:4321',
  '0.0.0.0:4321',
  '[::1]:4321',
  '127.0.0.1:4321, evil.example',
]
const hostileOrigins = [
  'null',
  '',
  'http://localhost:4321',
  'https://127.0.0.1:4321',
  'http://127.0.0.1:4321/',
  'http://127.0.0.1:4322',
  'http://127.0.0.1',
  'http://127.0.0.1:4321.evil.example',
  'http://evil.example',
  'file://',
  'breakledger://app',
]
const hostileCookies = [
  undefined,
  '',
  `${cookieName(4321)}=`,
  `${cookieName(4321)}=session-of-this-ru`,
  `${cookieName(4321)}=session-of-this-runn`,
  `${cookieName(4321)}=ticket-of-this-run`,
  `${cookieName(4322)}=session-of-this-run`,
  `x${cookieName(4321)}=session-of-this-run`,
  'session-of-this-run',
  `${cookie}; ${cookieName(4321)}=other`,
]

describe('judgePage', () => {
  test('the cookie opens the page', () => {
    expect(judgePage(page(), secrets)).toEqual({ kind: 'page', path: '/' })
    expect(judgePage(page({ target: '/assets/index.js?v=1', method: 'HEAD' }), secrets)).toEqual({
      kind: 'page',
      path: '/assets/index.js',
    })
    expect(judgePage(page({ cookie: `other=1; ${cookie}; more=2` }), secrets)).toMatchObject({ kind: 'page' })
  })

  test('the ticket is exchanged at the first address only', () => {
    const first = page({ cookie: undefined, target: '/?token=ticket-of-this-run' })
    expect(judgePage(first, secrets)).toEqual({ kind: 'exchange' })
    expect(judgePage({ ...first, target: '/assets/a.js?token=ticket-of-this-run' }, secrets)).toMatchObject({
      status: 403,
    })
  })

  test('whoever asks for the headers alone does not use the ticket up', () => {
    const peek = page({ cookie: undefined, target: '/?token=ticket-of-this-run', method: 'HEAD' })
    expect(judgePage(peek, secrets)).toEqual({ kind: 'page', path: '/' })
  })

  test('a used ticket opens nothing and says so; the browser that holds the cookie sees the page without new secrets', () => {
    const used = { ...secrets, ticketUsed: true }
    const again = page({ target: '/?token=ticket-of-this-run' })
    expect(judgePage({ ...again, cookie: undefined }, used)).toMatchObject({
      kind: 'refuse',
      status: 403,
      because: expect.stringContaining('works once, in one browser'),
    })
    expect(judgePage(again, used)).toEqual({ kind: 'page', path: '/' })
  })

  test('a cookie that somebody planted under our name is called that', () => {
    for (const planted of [`${cookieName(4321)}=planted`, `${cookieName(4321)}=planted; ${cookie}`])
      expect(judgePage(page({ cookie: planted }), secrets)).toMatchObject({
        status: 403,
        because: expect.stringContaining('has left a cookie under the name of ours'),
      })
  })

  test('a tab that asks why it is kept out is told', () => {
    expect(judgePage(upgrade(), secrets)).toEqual({ kind: 'admitted' })
    expect(judgePage(upgrade({ tab: 'breakledger, none' }), secrets)).toMatchObject({
      because: expect.stringContaining('This tab was not opened'),
    })
    expect(judgePage(upgrade({ cookie: `${cookieName(4321)}=planted` }), secrets)).toMatchObject({
      because: expect.stringContaining('has left a cookie'),
    })
    expect(judgePage(upgrade({ origin: 'http://127.0.0.1:4322' }), secrets)).toMatchObject({ status: 403 })
  })

  test.each(['', 'ticket-of-this-ru', 'TICKET-OF-THIS-RUN', 'session-of-this-run', 'null'])(
    'the wrong ticket "%s" is refused',
    (ticket) => {
      expect(judgePage(page({ cookie: undefined, target: `/?token=${ticket}` }), secrets)).toMatchObject({
        status: 403,
      })
    },
  )

  test.each(hostileHosts)('Host %s is refused, right cookie or not', (host) => {
    expect(judgePage(page({ host }), secrets)).toMatchObject({ kind: 'refuse', status: 403 })
    expect(judgePage(page({ host, target: '/?token=ticket-of-this-run' }), secrets)).toMatchObject({ status: 403 })
  })

  test.each(hostileOrigins)('Origin "%s" is refused', (origin) => {
    expect(judgePage(page({ origin }), secrets)).toMatchObject({ kind: 'refuse', status: 403 })
  })

  test.each(hostileCookies)('cookie "%s" is refused', (hostile) => {
    expect(judgePage(page({ cookie: hostile }), secrets)).toMatchObject({ kind: 'refuse', status: 403 })
  })

  test.each(['POST', 'PUT', 'DELETE', 'OPTIONS', 'CONNECT', 'get', undefined])('method %s is refused', (method) => {
    expect(judgePage(page({ method }), secrets)).toMatchObject({ kind: 'refuse', status: 405 })
  })

  test.each([
    undefined,
    '',
    'index.html',
    '*',
    '//evil.example/',
    'http://evil.example/',
    '/\\evil',
    '/../a',
    '/a/%2e%2e/b',
    '/a\tb',
  ])('target %s cannot be read', (target) => {
    expect(judgePage(page({ target }), secrets)).toMatchObject({ kind: 'refuse', status: 400 })
  })
})

describe('judgeUpgrade', () => {
  test('our page with its cookie may join', () => {
    expect(judgeUpgrade(upgrade(), secrets)).toEqual({ kind: 'join' })
  })

  test.each([
    undefined,
    '',
    'breakledger',
    'tab-of-this-run',
    'breakledger, tab-of-this-ru',
    'breakledger, session-of-this-run',
    'breakledger, ticket-of-this-run',
    'breakledger, tab-of-this-run, more',
    'other, tab-of-this-run',
  ])('the cookie with "%s" for the tab is refused: other ports of this computer get the cookie too', (tab) => {
    expect(judgeUpgrade(upgrade({ tab }), secrets)).toMatchObject({ kind: 'refuse', status: 403 })
  })

  test('the ticket alone does not open the socket', () => {
    const target = `${socketPath}?token=ticket-of-this-run`
    expect(judgeUpgrade(upgrade({ cookie: undefined, target }), secrets)).toMatchObject({ status: 403 })
  })

  test.each(hostileHosts)('Host %s is refused', (host) => {
    expect(judgeUpgrade(upgrade({ host }), secrets)).toMatchObject({ kind: 'refuse', status: 403 })
  })

  test.each([undefined, ...hostileOrigins])('Origin "%s" is refused', (origin) => {
    expect(judgeUpgrade(upgrade({ origin }), secrets)).toMatchObject({ kind: 'refuse', status: 403 })
  })

  test.each(hostileCookies)('cookie "%s" is refused', (hostile) => {
    expect(judgeUpgrade(upgrade({ cookie: hostile }), secrets)).toMatchObject({ kind: 'refuse', status: 403 })
  })

  test.each(['/', '/other', undefined, `${socketPath}/x`])('target %s is refused', (target) => {
    expect(judgeUpgrade(upgrade({ target }), secrets)).toMatchObject({ kind: 'refuse', status: 400 })
  })
})
