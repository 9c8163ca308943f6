import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import { procedures } from '#contract/procedures.ts'
import { createRealEngine } from '#engine/createRealEngine.ts'
import { chromiumPath } from './harness/chromium.ts'
import { hosts, openPage, takePicture } from './harness/openPage.ts'

describe.skipIf(chromiumPath === null).each(hosts)('a break on the virtual amplifier behind the %s host', (host) => {
  test('is drawn as it happens and kept, without a complaint of the page', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'breakledger-live-'))
    const engine = await createRealEngine({
      archivePath: join(folder, 'live.breakledger'),
      host: { host: host === 'desktop' ? 'desktop' : 'loopback', capabilities: [] },
      program: 'Breakledger test',
      demo: true,
    })
    const opened = await openPage({ host, engine })
    onTestFinished(async () => {
      await opened.close()
      await engine.close()
      await engine.archive.close()
      rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 })
    })
    const { page, problems } = opened
    await page.getByRole('navigation').waitFor()
    await engine.handlers['preferences.set']({ cautionsRead: true })

    const source = { kind: 'virtual', scenario: 'brittle', rateHz: 200, seed: 3, speed: 10, breaks: 1 } as const
    await engine.handlers['bench.connect'](procedures['bench.connect'].input.parse({ source }))
    await page.getByRole('link', { name: 'Bench', exact: true }).click()
    await page.locator('canvas').first().waitFor()
    const list = procedures['breaks.list'].input.parse({})
    const peak = async () => (await engine.handlers['breaks.list'](list)).rows[0]?.outcome
    await expect.poll(peak, { interval: 200 }).toBe('break')
    await takePicture(page, `live-break-${host}`)
    expect(problems).toEqual([])
  })
})
