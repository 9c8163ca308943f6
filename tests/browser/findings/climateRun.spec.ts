import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { type OwnEngine, openOwnEngine } from '../harness/ownEngine.ts'
import { tabTo } from '../harness/tabTo.ts'
import { at } from '../screens/screenSteps.ts'

const sample = join(import.meta.dirname, '../../../samples/climate/sail-loft.csv')

describe.skipIf(chromiumPath === null)('the climate of a store', () => {
  let own: OwnEngine
  let opened: OpenedPage
  afterEach(async () => {
    await opened?.close()
    await own?.close()
  })

  it('is brought in from a file, read and set aside by keyboard', async () => {
    own = await openOwnEngine()
    await own.engine.handlers['preferences.set']({ cautionsRead: true, operator: 'Ada' })
    opened = await openPage({ host: 'loopback', engine: own.engine })
    const { page, problems } = opened
    const press = (key: string) => page.keyboard.press(key)
    await at('#/climate')(page)
    await tabTo(page, 'a[href="#/climate/new"]')
    await press('Enter')
    await page.getByRole('heading', { name: 'Bring in a logger file' }).waitFor()
    await page.getByLabel('File of the logger').locator('input').setInputFiles(sample)

    // What the headings cannot say
    await page.getByRole('button', { name: 'Show what the rows become' }).focus()
    await press('Enter')
    await page.getByText('Say what time the clock of the logger kept.').waitFor()
    // The focus follows the sentence by a frame or two
    await page.locator('[data-wrong] :focus').waitFor()
    await page.keyboard.type('+01:00')
    await page.getByLabel('Name of the store').focus()
    await page.keyboard.type('loft')
    await press('Enter')
    await page.getByRole('status').filter({ hasText: '600 readings would be new' }).waitFor()
    await page.getByText(/No reading from .*: 3 days/).waitFor()
    await tabTo(page, 'button[value="import"]')
    await press('Enter')
    await page.getByRole('status').filter({ hasText: '600 readings are new' }).waitFor()
    await tabTo(page, '.climate-form a[href="#/climate"]')
    await press('Enter')

    // The figure is read, and the file set aside
    await page.getByRole('group', { name: 'temperature of exposure loft over time' }).focus()
    await press('ArrowRight')
    await page
      .getByText(/Feb 2026: .*°C/)
      .first()
      .waitFor()
    await tabTo(page, '.climate-imports button')
    await press('Enter')
    await page.keyboard.type('it hung in the office')
    await tabTo(page, 'dialog button[type="submit"]')
    await press('Enter')
    await page.getByText('set aside by Ada: it hung in the office').waitFor()
    await page.getByText('Every logger file of this store is set aside.').waitFor()
    expect(problems).toEqual([])
  })
})
