import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { createSwitchingEngine } from '#shells/switchingEngine.ts'
import { chromiumPath } from './harness/chromium.ts'
import { loadSpecimen } from './harness/loadSpecimen.ts'
import { openPage } from './harness/openPage.ts'
import { readCautions } from './harness/readCautions.ts'

test.skipIf(chromiumPath === null)(
  'the demo is one action away from an own archive, waits for the cautions and for the person, and leads back',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'breakledger-archives-'))
    const places = { own: join(folder, 'loft.breakledger'), demo: join(folder, 'demo.breakledger') }
    const engine = await createSwitchingEngine({
      ...{ archivePath: places.own, demo: false, places, openedFile: join(folder, 'opened.json') },
      ...{ host: 'loopback', program: 'Breakledger test' },
    })
    const opened = await openPage({ host: 'loopback', engine })
    onTestFinished(async () => {
      await opened.close()
      await engine.close()
      rmSync(folder, { recursive: true, force: true })
    })
    const { page, problems } = opened
    const mark = (name: RegExp) => page.getByRole('button', { name })
    await mark(/Open now: loft/).click()
    await page.getByRole('dialog').getByRole('button', { name: /^Demo/ }).click()

    await mark(/Open now: Demo, simulated/).waitFor()
    await page.getByRole('dialog', { name: 'Before you load a specimen' }).waitFor()
    await loadSpecimen(page)
    await readCautions(page)
    await page.getByRole('heading', { name: 'Waiting for load' }).waitFor()
    // The stream has run all the time, and nothing was loaded that nobody asked for.
    const { breaks } = (await engine.handlers['app.info']({})).archive
    expect(breaks).toBeGreaterThan(200)
    expect(await page.getByText('uncalibrated').count()).toBe(0)
    await loadSpecimen(page)
    await page.getByRole('heading', { name: /^Broke at/ }).waitFor()
    await expect.poll(async () => (await engine.handlers['app.info']({})).archive.breaks).toBe(breaks + 1)

    await page.getByRole('button', { name: 'Open my own archive' }).click()
    await mark(/Open now: loft/).waitFor()
    await mark(/Open now: loft/).click()
    await page.getByLabel('Path of another file').fill(join(folder, 'bilge'))
    await page.getByRole('button', { name: 'Make it as a new archive' }).click()
    await mark(/Open now: bilge/).waitFor()
    expect(engine.path()).toBe(join(folder, 'bilge.breakledger'))
    expect(problems).toEqual([])
  },
)
