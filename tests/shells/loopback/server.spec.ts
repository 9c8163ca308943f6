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

let pageFolder: string
let loopback: Loopback
const engine = createScriptedEngine({ 'ports.list': async () => [] })

beforeAll(() => {
  pageFolder = mkdtempSync(join(tmpdir(), 'breakledger-page-'))
  writeFileSync(join(pageFolder, 'index.html'), '<title>page</title>')
  writeFileSync(join(pageFolder, 'notes.txt'), 'not a file of the page')
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
  test('the printed address leads to the clean one with a cookie that no script and no other site can use', async () => {
    const first = await ask(pathOf(loopback.url))
    expect([first.status, first.headers.location]).toEqual([303, '/'])
    expect(String(first.headers['set-cookie'])).toMatch(/; HttpOnly; SameSite=Strict; Path=\/;/)
    const cookie = String(first.headers['set-cookie']).split(';')[0] ?? ''
    const page = await ask('/', { cookie })
    expect([page.status, page.body]).toEqual([200, '<title>page</title>'])
    expect(page.headers['content-security-policy']).toContain(`connect-src 'self' ws://127.0.0.1:${loopback.port}`)
  })

  test('the printed address works until a browser has come back with the cookie, then no more', async () => {
    expect((await ask(pathOf(loopback.url))).status).toBe(303)
    const cookie = await exchangeTicket(loopback.url)
    expect((await ask('/', { cookie })).status).toBe(200)
    const again = await ask(pathOf(loopback.url))
    expect([again.status, again.headers['set-cookie']]).toEqual([403, undefined])
    expect(again.body).toContain('works once')
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
    const cookie = await exchangeTicket(loopback.url)
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
    ['/notes.txt', 404],
    ['/missing.js', 404],
  ])('%s is answered with %i', async (path, status) => {
    const cookie = await exchangeTicket(loopback.url)
    const answer = await ask(path, { cookie })
    expect(answer.status).toBe(status)
    expect(answer.headers['content-security-policy']).toContain("default-src 'none'")
  })

  test('HEAD gets headers alone, and other methods are refused', async () => {
    const cookie = await exchangeTicket(loopback.url)
    const head = await ask('/', { cookie }, 'HEAD')
    expect([head.status, head.body]).toEqual([200, ''])
    expect((await ask('/', { cookie }, 'POST')).status).toBe(405)
  })

  test('a page that is not built says how to build it', async () => {
    const unbuilt = await startLoopback({ engine, pageFolder: join(pageFolder, 'missing'), port: 0 })
    const cookie = await exchangeTicket(unbuilt.url)
    const answer = await fetch(new URL('/', unbuilt.url), { headers: { cookie } })
    expect(await answer.text()).toContain('npm run build')
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
  const wire = (headers: Record<string, string>) =>
    new WebSocket(`ws://127.0.0.1:${loopback.port}/socket`, { headers, handshakeTimeout: 5000 })
  const opened = (socket: WebSocket) =>
    new Promise<number>((resolve) => {
      socket.on('open', () => resolve(101))
      socket.on('unexpected-response', (_request, answer) => resolve(answer.statusCode ?? 0))
      socket.on('error', () => {})
    })
  const closed = (socket: WebSocket) => new Promise<number>((resolve) => socket.on('close', resolve))
  const origin = () => `http://127.0.0.1:${loopback.port}`

  test('opens for our page with its cookie, and for nobody else', async () => {
    const cookie = await exchangeTicket(loopback.url)
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
      const socket = wire(headers)
      statuses.push(await opened(socket))
      socket.terminate()
    }
    expect(statuses).toEqual([101, 403, 403, 403, 403, 403, 403])
  })

  test('bad frames close their own socket and leave the others and the program alone', async () => {
    const cookie = await exchangeTicket(loopback.url)
    const good = wire({ cookie, origin: origin() })
    expect(await opened(good)).toBe(101)
    for (const frame of ['garbage', Buffer.from([1, 2, 3]), Buffer.alloc(20_000_000)]) {
      const bad = wire({ cookie, origin: origin() })
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
    const cookie = await exchangeTicket(loopback.url)
    const socket = wire({ cookie, origin: origin() })
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
    const cookie = await exchangeTicket(loopback.url)
    const socket = wire({ cookie, origin: origin() })
    await opened(socket)
    const end = closed(socket)
    await loopback.close()
    expect(await end).toBe(1006)
    expect(engine.listeners()).toBe(0)
  })
})
