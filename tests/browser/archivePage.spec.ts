import { expect, onTestFinished, test } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { benchEngine, virtualChoice } from '#tests/fakes/benchEngine.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { headText } from '#words/keeping/headWords.ts'
import { chromiumPath } from './harness/chromium.ts'
import { openPage } from './harness/openPage.ts'

test.skipIf(chromiumPath === null)(
  'the page of the archive stops its check, and shows the head of the chain as it is after the newest record',
  async () => {
    const home = await temporaryArchive()
    // As long as a very large archive takes.
    const verify: Archive['verify'] = (onProgress, signal) =>
      new Promise((_resolve, reject) => {
        onProgress({ task: 'verify', done: 3, total: 10 })
        signal.addEventListener('abort', () => reject(signal.reason))
      })
    const { engine, handlers } = await benchEngine({ ...home.archive, verify })
    await handlers['preferences.set']({ cautionsRead: true, source: virtualChoice })
    const { page, close } = await openPage({ host: 'loopback', engine })
    onTestFinished(async () => {
      await close()
      await engine.close()
      await home.remove()
    })
    await page.getByRole('link', { name: 'Archive', exact: true }).click()
    await page.getByRole('button', { name: 'Verify the archive' }).click()
    await page.getByText('3 of 10').waitFor()
    await page.getByRole('button', { name: 'Cancel' }).click()
    await page.getByText('Cancelled. Nothing was changed.').waitFor()
    expect(await page.getByRole('button', { name: 'Verify the archive' }).isEnabled()).toBe(true)
    const head = async () => headText((await home.archive.chainHead())!)
    const before = await head()
    await page.getByText(before, { exact: true }).waitFor()
    await addBlocks(home.archive, ['A-1'])
    expect(await head()).not.toBe(before)
    await page.getByText(await head(), { exact: true }).waitFor()
  },
)
