import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, expect, it } from 'vitest'

const start = fileURLToPath(new URL('../../../electron/shells/start/start.ts', import.meta.url))

let home: string
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'breakledger-start-'))
})
afterEach(() => rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 }))

/** What `npm start` says with those words until it ends, or until it has said `end`, when it is asked to end. */
async function run(words: readonly string[], end: RegExp | null = null) {
  const child = spawn(process.execPath, [start, ...words], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, HOME: home, XDG_DATA_HOME: home },
  })
  let said = ''
  let asked = false
  const hear = (text: string) => {
    said += text
    // Once: a second time would end it at once
    if (asked || !end?.test(said)) return
    asked = child.kill('SIGTERM')
  }
  for (const stream of [child.stdout, child.stderr]) stream.setEncoding('utf8').on('data', hear)
  const code = await new Promise((resolve) => child.on('close', resolve))
  return { said, code }
}

it('opens the demo for a person who has no archive yet, and says why in the browser', async () => {
  const { said, code } = await run(['--browser', '--no-open'], /token=\S+\n/)
  expect(said).toMatch(/^Breakledger runs in the browser \(as asked\): http:\/\/127\.0\.0\.1:\d+\/\S+\n/)
  expect(code).toBe(0)
  expect(existsSync(join(home, 'breakledger/demo.breakledger'))).toBe(true)
  expect(existsSync(join(home, 'breakledger/archive.breakledger'))).toBe(false)
})

it('opens the archive that is named, and no other', async () => {
  const archive = join(home, 'own.breakledger')
  const { code } = await run(['--browser', '--no-open', '--archive', archive], /token=\S+\n/)
  expect(code).toBe(0)
  expect(existsSync(archive)).toBe(true)
  expect(existsSync(join(home, 'breakledger/demo.breakledger'))).toBe(false)
})

it('says how it is written when asked, and when it was written otherwise', async () => {
  expect(await run(['--help'])).toMatchObject({ code: 0, said: expect.stringContaining('Usage: npm start') })
  expect(await run(['--browzer'])).toMatchObject({ code: 2, said: expect.stringContaining('Usage: npm start') })
})
