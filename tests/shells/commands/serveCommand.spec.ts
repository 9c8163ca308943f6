import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { openArchive } from '#archive/openArchive.ts'
import { startCommand } from '#tests/fakes/commandProcess.ts'

let folder = ''
beforeAll(async () => {
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
    expect((await fetch(url, { redirect: 'manual' })).status).toBe(303)
    serve.child.kill('SIGINT')
    expect(await serve.ended).toBe(0)
  } finally {
    serve.child.kill('SIGKILL')
  }
  const archive = await openArchive({ path: archivePath, program: 'test', mode: 'read' })
  expect(await archive.info()).toMatchObject({ specimens: 0, breaks: 0, demo: false })
  await archive.close()
})

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
