import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { _electron, type ElectronApplication, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { BenchState } from '#contract/bench/bench.ts'
import type { Carrier } from '#contract/wire/carrier.ts'
import { pageAddress } from '#shells/desktop/pageAddress.ts'
import { buildIfNeeded, partNames, projectFolder } from '#shells/start/build.ts'
import { noWindowBecause, presentElectron } from '#shells/start/electronBinary.ts'

const binary = presentElectron()
const noWindow = noWindowBecause({
  platform: process.platform,
  userId: process.getuid?.(),
  environment: process.env,
})
const because = binary === null ? 'Electron is not here' : noWindow

/** Asks the program through the page's own carrier, as the page does. */
async function ask<Value>(page: Page, name: string, input: unknown): Promise<Value> {
  const reply = await page.evaluate(
    ([asked, given]) => (window as unknown as { breakledger: Carrier }).breakledger.call(asked, given),
    [name, input] as const,
  )
  expect(reply).toMatchObject({ ok: true })
  return (reply as { value: Value }).value
}

describe.skipIf(because !== null)(
  `the program in Electron itself${because === null ? '' : ` (not run: ${because})`}`,
  () => {
    let folder: string
    let program: ElectronApplication
    let page: Page

    const start = async () => {
      program = await _electron.launch({
        executablePath: binary!,
        args: [projectFolder, '--demo', '--archive', join(folder, 'smoke.breakledger')],
      })
      page = await program.firstWindow()
    }
    const breaks = async () => (await ask<{ total: number }>(page, 'breaks.list', {})).total

    beforeAll(async () => {
      for (const part of partNames) await buildIfNeeded(part)
      folder = mkdtempSync(join(tmpdir(), 'breakledger-smoke-'))
      await start()
    })
    afterAll(async () => {
      await program?.close()
      rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 })
    })

    test('opens on its own page', async () => {
      await page.getByRole('navigation').waitFor()
      expect(page.url()).toContain(pageAddress)
      expect(await page.title()).toContain('Breakledger')
    })

    test('plots a run of the virtual amplifier and keeps its break', async () => {
      const status = async () => (await ask<BenchState>(page, 'bench.state', {})).connection.status
      // The demo fills its archive and connects its own bench first.
      await expect.poll(status).toBe('open')
      const before = await breaks()
      const source = { kind: 'virtual', scenario: 'brittle', rateHz: 80, seed: 1, speed: 20, breaks: 1 }
      await ask(page, 'bench.connect', { source })
      await page.locator('canvas').first().waitFor()
      await expect.poll(breaks).toBeGreaterThan(before)
    })

    test('has saved what it says it has', async () => {
      expect(await ask(page, 'archive.verify', {})).toMatchObject({ sound: true, faults: [] })
    })

    test('finds it again after it was closed', async () => {
      const before = await breaks()
      await program.close()
      await start()
      await page.getByRole('navigation').waitFor()
      expect(await breaks()).toBeGreaterThanOrEqual(before)
    })

    test('goes nowhere else and opens no other window', async () => {
      const opened = await page.evaluate(() => {
        location.href = 'http://127.0.0.1:9/'
        return window.open('http://127.0.0.1:9/') === null
      })
      expect(opened).toBe(true)
      expect(page.url()).toContain(pageAddress)
      expect(program.windows()).toHaveLength(1)
    })
  },
)
