import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { WebSocket } from 'ws'
import { type Loopback, startLoopback } from '#shells/loopback/server.ts'
import { exchangeTicket } from '#tests/contract/carriers.ts'
import { createScriptedEngine } from '#tests/fakes/scripted/scriptedEngine.ts'

const pageText = '<head><title>page</title></head>'
let pageFolder: string
let loopback: Loopback
const engine = createScriptedEngine({ 'ports.list': async () => [] })

beforeAll(() => {
  pageFolder = mkdtempSync(join(tmpdir(), 'breakledger-page-'))
  writeFileSync(join(pageFolder, 'index.html'), pageText)
  writeFileSync(join(pageFolder, 'notes.md'), 'not a file of the page')
})
afterAll(() => rmSync(pageFolder, { recursive: true }))
beforeEach(async () => {
  loopback = await startLoopback({ engine, pageFolder, port: 0 })
})
afterEach(() => loopback.close())

type Answer = { status: number; headers: Record<string, unknown>; body: string }

/** Asks without fetch, which would tidy up a hostile path and forbid a hostile Host. */
function ask(path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port: loopback.port, path, method, headers, agent: false }, (answer) => {
      let body = ''
      answer.setEncoding('utf8')
      answer.on('data', (text: string) => {
        body += text
      })
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body }))
    })
    asked.on('error', reject)
    asked.end()
  })
}

const pathOf = (url: string) => url.slice(new URL(url).origin.length)

describe('startLoopback', () => {
  test('the printed address opens the page with a cookie that no script and no other site can use, and with a secret for the tab', async () => {
    const first = await ask(pathOf(loopback.url))
    expect(first.status).toBe(200)
    expect(String(first.headers['set-cookie'])).toMatch(/; HttpOnly; SameSite=Strict; Path=\/$/)
    expect(first.body).toMatch(/^<head>\s*<meta name="breakledger-tab" content="[\w-]{43}" \/><title>page</)
    const cookie = String(first.headers['set-cookie']).split(';')[0] ?? ''
    const page = await ask('/', { cookie })
    expect([page.status, page.body, page.headers['set-cookie']]).toEqual([200, pageText, undefined])
    expect(page.headers['content-security-policy']).toContain(`connect-src 'self' ws://127.0.0.1:${loopback.port}`)
  })

  test('the ticket dies at its first exchange, and whoever comes second is told', async () => {
    const both = await Promise.all([ask(pathOf(loopback.url)), ask(pathOf(loopback.url))])
    expect(both.map(({ status }) => status).sort()).toEqual([200, 403])
    await loopback.opened
    const again = await ask(pathOf(loopback.url))
    expect([again.status, again.headers['set-cookie']]).toEqual([403, undefined])
    expect(again.body).toContain('works once')
  })

  test('a tab that cannot connect is told why where it would connect', async () => {
    const { cookie, tab } = await exchangeTicket(loopback.url)
    const mine = { cookie, 'x-breakledger-tab': `breakledger, ${tab}` }
    expect((await ask('/socket', mine)).status).toBe(204)
    const strange = await ask('/socket', { ...mine, 'x-breakledger-tab': 'breakledger, none' })
    expect([strange.status, strange.body]).toEqual([403, expect.stringContaining('This tab was not opened')])
  })

  test('the token is long, and new each time', async () => {
    const other = await startLoopback({ engine, pageFolder, port: 0 })
    const tokens = [loopback, other].map(({ url }) => new URL(url).searchParams.get('token') ?? '')
    await other.close()
    expect(tokens[0]).not.toBe(tokens[1])
    // 32 bytes in base64url.
    for (const token of tokens) expect(token).toMatch(/^[\w-]{43}$/)
  })

  test('it listens on 127.0.0.1 alone and answers under no other name', async () => {
    const { cookie } = await exchangeTicket(loopback.url)
    expect(new URL(loopback.url).hostname).toBe('127.0.0.1')
    expect((await ask('/', { cookie, host: `evil.example:${loopback.port}` })).status).toBe(403)
    expect((await ask('/', { cookie, host: `localhost:${loopback.port}` })).status).toBe(403)
    expect((await ask('/', { cookie, origin: 'http://evil.example' })).status).toBe(403)
  })

  test.each([
    ['/../package.json', 400],
    ['/%2e%2e/package.json', 400],
    ['/..%2fpackage.json', 404],
    ['//etc/passwd', 400],
    ['/notes.md', 404],
    ['/missing.js', 404],
  ])('%s is answered with %i', async (path, status) => {
    const { cookie } = await exchangeTicket(loopback.url)
    const answer = await ask(path, { cookie })
    expect(answer.status).toBe(status)
    expect(answer.headers['content-security-policy']).toContain("default-src 'none'")
  })

  test('HEAD gets headers alone, and other methods are refused', async () => {
    const { cookie } = await exchangeTicket(loopback.url)
    const head = await ask('/', { cookie }, 'HEAD')
    expect([head.status, head.body]).toEqual([200, ''])
    expect((await ask('/', { cookie }, 'POST')).status).toBe(405)
  })

  test('a page that is not built says how to build it', async () => {
    const unbuilt = await startLoopback({ engine, pageFolder: join(pageFolder, 'missing'), port: 0 })
    // Twice: what could not be opened is not used up.
    for (let i = 0; i < 2; i++) expect(await (await fetch(unbuilt.url)).text()).toContain('npm run build')
    await unbuilt.close()
  })

  test.each([
    ['no HTTP at all', 'garbage\r\n\r\n', 400],
    ['an HTTP/1.1 request without a Host', 'GET / HTTP/1.1\r\n\r\n', 403],
    ['a request with an expectation', 'GET / HTTP/1.1\r\nHost: x\r\nExpect: more\r\n\r\n', 403],
    [
      'an upgrade from nowhere',
      'GET /socket HTTP/1.1\r\nHost: x\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n',
      403,
    ],
  ])('%s is refused with the headers of every other answer', async (_what, sent, status) => {
    const answer = await new Promise<string>((resolve, reject) => {
      let heard = ''
      const stream = connect(loopback.port, '127.0.0.1', () => stream.write(sent))
      stream.on('data', (data) => {
        heard += data
        if (heard.includes('\r\n\r\n')) stream.end()
      })
      stream.on('close', () => resolve(heard)).on('error', reject)
    })
    expect(answer).toMatch(`HTTP/1.1 ${status} `)
    expect(answer).toContain("Content-Security-Policy: default-src 'none'")
    expect(answer).toContain('X-Content-Type-Options: nosniff')
  })

  test('a port that is taken is a clear trouble', async () => {
    await expect(startLoopback({ engine, pageFolder, port: loopback.port })).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringContaining(String(loopback.port)),
      hint: expect.stringContaining('--http-port'),
    })
  })
})

describe('the socket of startLoopback', () => {
  const wire = (headers: Record<string, string>, tab: string) =>
    new WebSocket(`ws://127.0.0.1:${loopback.port}/socket`, ['breakledger', tab], { headers })
  const opened = (socket: WebSocket) =>
    new Promise<number>((resolve) => {
      socket.on('open', () => resolve(101))
      socket.on('unexpected-response', (_request, answer) => resolve(answer.statusCode ?? 0))
      socket.on('error', () => {})
    })
  const closed = (socket: WebSocket) => new Promise<number>((resolve) => socket.on('close', resolve))
  const origin = () => `http://127.0.0.1:${loopback.port}`

  test('opens for our page with its cookie, and for nobody else', async () => {
    const { cookie, tab } = await exchangeTicket(loopback.url)
    const statuses: number[] = []
    for (const headers of [
      { cookie, origin: origin() },
      { origin: origin() },
      { cookie, origin: 'http://evil.example' },
      { cookie, origin: 'null' },
      { cookie },
      { cookie: `${cookie}x`, origin: origin() },
      { cookie, origin: origin(), host: `evil.example:${loopback.port}` },
    ] as Record<string, string>[]) {
      const socket = wire(headers, tab)
      statuses.push(await opened(socket))
      socket.terminate()
    }
    expect(statuses).toEqual([101, 403, 403, 403, 403, 403, 403])
  })

  test('the cookie alone does not open it, and the tab is not told its secret back', async () => {
    const { cookie, tab } = await exchangeTicket(loopback.url)
    const other = wire({ cookie, origin: origin() }, 'none')
    expect(await opened(other)).toBe(403)
    const own = wire({ cookie, origin: origin() }, tab)
    expect([await opened(own), own.protocol]).toEqual([101, 'breakledger'])
    own.terminate()
  })

  test('bad frames close their own socket and leave the others and the program alone', async () => {
    const { cookie, tab } = await exchangeTicket(loopback.url)
    const good = wire({ cookie, origin: origin() }, tab)
    expect(await opened(good)).toBe(101)
    for (const frame of ['garbage', Buffer.from([1, 2, 3]), Buffer.alloc(20_000_000)]) {
      const bad = wire({ cookie, origin: origin() }, tab)
      await opened(bad)
      bad.send(frame)
      expect([1006, 1008, 1009]).toContain(await closed(bad))
    }
    const reply = new Promise((resolve) => good.on('message', (data) => resolve(JSON.parse(String(data)))))
    good.send(JSON.stringify({ body: { id: 1, name: 'ports.list', input: {} }, arrays: [] }))
    expect(await reply).toEqual({ body: { id: 1, reply: { ok: true, value: [] } }, arrays: [] })
    good.terminate()
  })

  test('a frame with an array, which arrives anywhere in its buffer, is read and answered', async () => {
    const { cookie, tab } = await exchangeTicket(loopback.url)
    const socket = wire({ cookie, origin: origin() }, tab)
    await opened(socket)
    const replies: unknown[] = []
    socket.on('message', (data) => replies.push(JSON.parse(String(data))))
    for (let id = 0; id < 8; id++) {
      socket.send(
        JSON.stringify({
          body: { id, name: 'ports.list', input: { extra: null } },
          arrays: [{ path: ['input', 'extra'], kind: 'Float64Array', length: 1 }],
        }),
      )
      socket.send(Buffer.alloc(8))
    }
    await expect.poll(() => replies.length).toBe(8)
    expect(replies[0]).toMatchObject({ body: { id: 0, reply: { ok: false, error: { code: 'invalid-input' } } } })
    socket.terminate()
  })

  test('closing hangs up on every page', async () => {
    const { cookie, tab } = await exchangeTicket(loopback.url)
    const socket = wire({ cookie, origin: origin() }, tab)
    await opened(socket)
    const end = closed(socket)
    await loopback.close()
    expect(await end).toBe(1006)
    expect(engine.listeners()).toBe(0)
  })
})
