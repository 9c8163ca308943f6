import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { listQuery } from '#contract/listQuery.ts'
import { specimenFields } from '#contract/specimens/specimen.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { hosts, type OpenedPage, openPage } from '../harness/openPage.ts'
import { type OwnEngine, openOwnEngine } from '../harness/ownEngine.ts'
import { tabTo } from '../harness/tabTo.ts'

const wide = join(import.meta.dirname, '../../../samples/sheets/wide-by-colour.xlsx')
const known = JSON.parse(readFileSync(wide.replace('.xlsx', '.expected.json'), 'utf8')) as { n: number }[]
const blocks = known.reduce((sum, { n }) => sum + n, 0)

describe.skipIf(chromiumPath === null)('past results', () => {
  let own: OwnEngine
  let opened: OpenedPage
  afterEach(async () => {
    await opened?.close()
    await own?.close()
  })

  it.each(hosts)('are mapped, tried and brought in once from the page behind %s, by keyboard', async (host) => {
    own = await openOwnEngine()
    await own.engine.handlers['preferences.set']({ cautionsRead: true, operator: 'Ada' })
    opened = await openPage({ host, engine: own.engine })
    const { page, problems } = opened
    const press = (key: string) => page.keyboard.press(key)
    const status = (words: string | RegExp) => page.getByRole('status').filter({ hasText: words }).waitFor()
    await page.getByRole('navigation').waitFor()
    await press('s')
    await tabTo(page, 'a[href="#/import"]')
    await press('Enter')
    await page.getByRole('heading', { name: 'Import past results' }).waitFor()
    const chooser = page.waitForEvent('filechooser')
    await tabTo(page, '.file-choice button')
    await press('Enter')
    await (await chooser).setFiles(wide)
    await page.getByRole('heading', { name: 'wide-by-colour.xlsx' }).waitFor()

    // What the headings cannot say: the unit, and what the colours mean
    await tabTo(page, '[aria-label="Unit of Load"]')
    await page.keyboard.type('lbf')
    for (const [colour, percent] of [
      ['no colour', '0'],
      ['yellow (FFFF00)', '25'],
      ['orange (FFC000)', '50'],
      ['red (FF0000)', '75'],
    ]) {
      await page.getByLabel(`Wood failure of ${colour}`).focus()
      await page.keyboard.type(percent!)
    }
    await tabTo(page, '.import-go button')
    await press('Enter')
    await status(/cannot be taken/)
    await page
      .getByText(/the mapping does not say what the colour 7F3F00/)
      .first()
      .waitFor()
    await page.getByLabel('Wood failure of brown (7F3F00)').focus()
    await page.keyboard.type('100')

    await page.getByLabel('Keep this mapping as').focus()
    await page.keyboard.type('By colour')
    await press('Enter')
    await page.getByRole('button', { name: 'Forget “By colour”' }).waitFor()
    await tabTo(page, '.import-go button')
    await press('Enter')
    await status(`${blocks} blocks would be added`)
    expect(await own.engine.handlers['imports.list']({})).toEqual([])
    await tabTo(page, '.import-go .button-primary')
    await press('Enter')
    await status(`${blocks} blocks were added.`)
    await page.getByText(`${blocks} results, in use`).waitFor()

    // The mapping is kept; a second import of the file adds nothing and says so
    await page.setInputFiles('input[type=file]', [])
    await page.setInputFiles('input[type=file]', wide)
    await page.getByLabel('Mapping', { exact: true }).selectOption('By colour')
    await page.getByLabel('Wood failure of red (FF0000)').waitFor()
    await expect.poll(() => page.getByLabel('Wood failure of red (FF0000)').inputValue()).toBe('75')
    await page.getByRole('button', { name: /^Try it/ }).click()
    await status('Nothing would be added, for the archive has all that could be read.')
    expect(await page.getByRole('button', { name: 'Import for good' }).count()).toBe(0)

    await page.getByRole('button', { name: /^Set aside: wide-by-colour/ }).click()
    await page.getByLabel(/^Reason/).fill('another bench')
    await press('Tab')
    await press('Enter')
    await page.getByText(`${blocks} results, set aside`).waitFor()
    expect(problems).toEqual([])
  })

  it('are stopped by keyboard while they are brought in: nothing half is stored, and the page says so', async () => {
    own = await openOwnEngine()
    const { handlers } = own.engine
    await handlers['preferences.set']({ cautionsRead: true, operator: 'Ada' })
    opened = await openPage({ host: 'loopback', engine: own.engine })
    const { page, problems } = opened
    await page.getByRole('navigation').waitFor()
    await page.evaluate(() => {
      location.hash = '#/import'
    })
    const rows = Array.from({ length: 10_000 }, (_, row) => `S-${row},casein C1,${4000 + row / 10},600`)
    const table = Buffer.from(`No,Adhesive,Load (N),Area (mm2)\n${rows.join('\n')}\n`)
    await page.setInputFiles('input[type=file]', { name: 'many.csv', mimeType: 'text/csv', buffer: table })
    await page.getByRole('heading', { name: 'many.csv' }).waitFor()
    await tabTo(page, '.import-go button')
    await page.keyboard.press('Enter')
    await page.getByText(/^10\s000 blocks would be added/).waitFor()
    await tabTo(page, '.import-go .button-primary')
    await page.keyboard.press('Enter')
    await page.locator('.import-progress button').waitFor()
    await tabTo(page, '.import-progress button')
    await page.keyboard.press('Enter')
    await page.getByText('The import was stopped; nothing of it was stored.').waitFor()
    expect(await handlers['imports.list']({})).toEqual([])
    expect((await handlers['specimens.list'](listQuery.parse({}))).total).toBe(0)
    await page.getByRole('button', { name: 'Import for good' }).waitFor()
    expect(problems).toEqual([])
  })

  it('read from a dial are typed as a list, each line understood at once, and signed once', async () => {
    own = await openOwnEngine()
    const { handlers } = own.engine
    await handlers['preferences.set']({ cautionsRead: true, operator: 'Ada' })
    for (const number of ['K-1', 'K-2'])
      await handlers['specimens.add']({
        ...{ fields: specimenFields.parse({ number, adhesive: 'casein C1', areaMm2: 600 }), by: 'Ada' },
      })
    opened = await openPage({ host: 'loopback', engine: own.engine })
    const { page, problems } = opened
    await page.getByRole('navigation').waitFor()
    await page.evaluate(() => {
      location.hash = '#/readings'
    })
    await page.getByLabel('Readings, one a line').focus()
    await page.keyboard.type('K-1; 4800; 75 %; CF\nK-22; 5100')
    await page.getByText('There is no block with the number K-22.').waitFor()
    await page.getByText('1 reading understood, 1 line to mend.').waitFor()
    await page.keyboard.press('Control+A')
    await page.keyboard.type('K-1; 4800; 75 %; CF\nK-2; 5,1 kN; 2024-05-02')
    await page.getByText('2 readings understood.').waitFor()
    await page.getByRole('cell', { name: '8.50' }).waitFor()
    await page.keyboard.press('Tab')
    await page.keyboard.type('50')
    await page.keyboard.press('Enter')
    await page.getByText('2 readings are recorded.').waitFor()
    const { rows } = await handlers['specimens.list'](listQuery.parse({ text: 'K-2' }))
    expect(rows[0]!.typedResultInForce).toMatchObject({
      ...{ source: 'dial', peakN: 5100, resolutionN: 50, readBy: 'Ada', brokenOn: '2024-05-02' },
    })
    expect(problems).toEqual([])
  })
})
