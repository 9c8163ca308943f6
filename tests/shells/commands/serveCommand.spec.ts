import { once } from 'node:events'
import { existsSync } from 'node:fs'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, expect, it, onTestFinished, vi } from 'vitest'
import { WebSocket } from 'ws'
import { openArchive } from '#archive/openArchive.ts'
import { encodeMessage } from '#contract/wire/messageCoding.ts'
import { sheetOfGrid } from '#domain/programme/labels/sheetGeometry.ts'
import { serveArchive } from '#shells/loopback/serveArchive.ts'
import { buildIfNeeded } from '#shells/start/build.ts'
import { emptyPage, exchangeTicket } from '#tests/contract/carriers.ts'
import { startCommand } from '#tests/fakes/commandProcess.ts'

let folder = ''
beforeAll(async () => {
  await buildIfNeeded('page')
  folder = await mkdtemp(join(tmpdir(), 'breakledger-serve-'))
})
afterAll(() => rm(folder, { recursive: true, force: true }))

it('prints its address first, answers it on 127.0.0.1 only to whoever holds it, and ends on Ctrl-C', async () => {
  const archivePath = join(folder, 'empty.breakledger')
  const serve = startCommand(['serve', '--no-open', '--archive', archivePath])
  try {
    const first = await serve.until(() => true)
    const url = String(first.url)
    expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\//)
    expect(Object.keys(first)).toEqual(['url'])
    expect((await fetch(new URL('/', url), { redirect: 'manual' })).status).toBeGreaterThanOrEqual(400)
    expect((await fetch(url)).headers.get('set-cookie')).toContain('HttpOnly')
    expect((await fetch(url)).status).toBe(403)
    serve.child.kill('SIGINT')
    expect(await serve.ended).toBe(0)
  } finally {
    serve.child.kill('SIGKILL')
  }
  const archive = await openArchive({ path: archivePath, program: 'test', mode: 'read' })
  expect(await archive.info()).toMatchObject({ specimens: 0, breaks: 0, demo: false })
  await archive.close()
})

it.skipIf(process.platform !== 'linux')(
  'starts the browser with the name of a private file, which is gone once the address is opened',
  async () => {
    const opener = join(folder, 'xdg-open')
    const said = join(folder, 'said')
    await writeFile(opener, `#!/bin/sh\necho "$@" > "${said}.new"; mv "${said}.new" "${said}"\n`, { mode: 0o755 })
    const serve = startCommand(['serve', '--archive', join(folder, 'opened.breakledger')], {
      PATH: `${folder}:${process.env.PATH}`,
      DISPLAY: ':0',
    })
    try {
      const url = String((await serve.until(() => true)).url)
      const token = new URL(url).searchParams.get('token') ?? 'none'
      await expect.poll(() => existsSync(said)).toBe(true)
      const words = (await readFile(said, 'utf8')).trim()
      expect(words).toMatch(/open\.html$/)
      expect(words).not.toContain(token)
      expect(await readFile(words, 'utf8')).toContain(url)
      await fetch(url)
      await expect.poll(() => existsSync(dirname(words))).toBe(false)
    } finally {
      serve.child.kill('SIGKILL')
    }
  },
)

it('says which port is taken', async () => {
  const words = ['serve', '--no-open', '--archive', join(folder, 'first.breakledger')]
  const first = startCommand(words)
  try {
    const port = new URL(String((await first.until(() => true)).url)).port
    const other = startCommand([...words.slice(0, 3), join(folder, 'second.breakledger'), '--http-port', port])
    expect(await other.ended).toBe(1)
    expect(other.errors()).toContain(`Port ${port}`)
    expect(other.lines).toEqual([])
  } finally {
    first.child.kill('SIGKILL')
  }
})

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0)
  } catch {
    return false
  }
}

it.skipIf(process.platform === 'win32')('ends the Chromium that prints for a page when it ends itself', async () => {
  const [browser, begun] = [join(folder, 'chromium'), join(folder, 'begun')]
  await writeFile(browser, `#!/bin/sh\necho $$ > "${begun}.new"; mv "${begun}.new" "${begun}"; exec sleep 1000\n`, {
    mode: 0o755,
  })
  vi.stubEnv('CHROMIUM_PATH', browser)
  const file = (name: string) => join(folder, 'printing', name)
  const serving = await serveArchive({
    ...{ archivePath: file('own'), keptHeads: file('heads'), openedFile: file('opened'), program: 'test', demo: false },
    ...{ places: { own: file('own'), demo: file('demo') }, pageFolder: emptyPage, port: 0 },
  }).finally(() => vi.unstubAllEnvs())
  onTestFinished(serving.close)
  const { cookie, tab } = await exchangeTicket(serving.url)
  const { origin, host } = new URL(serving.url)
  const socket = new WebSocket(`ws://${host}/socket`, ['breakledger', tab], { origin, headers: { cookie } })
  await once(socket, 'open')
  const input = { choice: { kind: 'numbers', first: 1, last: 20 }, sheet: sheetOfGrid('A4', 5, 13) }
  socket.send(encodeMessage({ id: 1, name: 'labels.pdf', input }).text)
  await expect.poll(() => existsSync(begun)).toBe(true)
  const pid = Number(await readFile(begun, 'utf8'))
  await serving.close()
  await expect.poll(() => isRunning(pid)).toBe(false)
})
