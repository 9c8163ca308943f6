import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openHere } from '#archive/openHere.ts'
import { procedures } from '#contract/procedures.ts'
import { nextRunnings } from '#tests/fakes/programme/nextRunnings.ts'
import { storeBlocks, storeStudy } from '../../archive/storedProgramme.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { loadSpecimen } from '../harness/loadSpecimen.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { type OwnEngine, openOwnEngine } from '../harness/ownEngine.ts'
import { at, settle } from '../screens/screenSteps.ts'

/** Puts a study with four blocks of one pull and two of another into a new archive. */
async function planned(path: string): Promise<void> {
  const opened = openHere({ path, program: 'test', mode: 'write', instant: '2031-03-01T08:00:00.000Z' })
  const runnings = nextRunnings(120, 6)
  const studyId = storeStudy(opened.database, { demo: true })
  storeBlocks(opened.database, studyId, [
    ...[2, 0, 3, 1].map((breakingOrder, at) => ({ breakingOrder, running: runnings[at]! })),
    ...[0, 1].map((breakingOrder, at) => ({
      ...{ ageMonths: 3, adhesive: 'resorcinol R2', breakingOrder, running: runnings[4 + at]! },
    })),
  ])
  opened.close()
}

/** Blocks glued and measured, then broken from a queue, by keyboard on the real engine and the virtual amplifier. */
describe.skipIf(chromiumPath === null)('a glue-up and a breaking session', () => {
  let own: OwnEngine
  let opened: OpenedPage
  let page: Page
  beforeAll(async () => {
    own = await openOwnEngine(planned)
    opened = await openPage({ host: 'loopback', engine: own.engine })
    page = opened.page
  })
  afterAll(async () => {
    await opened?.close()
    await own?.close()
  })

  const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')
  async function send(...values: string[]) {
    for (const value of values) {
      await page.keyboard.type(value)
      await page.keyboard.press('Enter')
    }
    await settle(page)
  }

  it('takes calipers in one pass, and asks at once about a size that can hardly be right', async () => {
    await at('#/glue-ups/new')(page)
    await page.getByLabel('All groups').check()
    await page.getByLabel('Lot of casein C1').fill('C1-lot-2')
    await page.getByLabel('Place of the loft blocks').focus()
    await page.keyboard.type('loft shelf 2')
    await page.locator('[data-cell]').first().focus()
    await send('30.1', '19,95')
    expect(await focused()).toBe('Length of 1223, in mm')
    await send('302')
    await page.getByText('should the point stand elsewhere, 30.2 mm?').waitFor()
    expect(await focused()).toBe('Length of 1223, in mm')
    await send('30.2', '20')
    expect(await focused()).toBe('Length of 1231, in mm')
    expect(await page.getByText('should the point').count()).toBe(0)
  })

  it('finds the row of a block whose number is scanned, and goes on there', async () => {
    await send('1274')
    expect(await focused()).toBe('Length of 1274, in mm')
    await send('1 3/16 in', '20')
    expect(await page.getByLabel('Length of 1231').inputValue()).toBe('')
    await page.getByText('603.3', { exact: true }).waitFor()
  })

  it('takes a doubtful size as it is where Enter says so again', async () => {
    await page.getByLabel('Length of 1231').focus()
    await send('36', '')
    expect(await focused()).toBe('Width of 1231, in mm')
    await send('20')
  })

  it('goes on with calipers whose reader did not look up at a question, so that no size is that of another block', async () => {
    const [length, width] = [page.getByLabel('Length of 1266'), page.getByLabel('Width of 1266')]
    await length.focus()
    await send('310', '20')
    expect(await focused()).toBe('Length of 1274, in mm')
    expect([await length.inputValue(), await width.inputValue()]).toEqual(['310', '20'])
    for (const cell of [length, width]) {
      await cell.fill('')
      await cell.blur()
    }
  })

  it('is still there after the page was lost', async () => {
    await page.evaluate(() =>
      window.addEventListener('beforeunload', (event) => event.stopImmediatePropagation(), true),
    )
    page.once('dialog', (dialog) => void dialog.accept())
    await page.reload()
    await page.getByRole('button', { name: 'Go on with it' }).click()
    expect(await page.getByLabel('Width of 1215').inputValue()).toBe('19,95')
    expect(await page.getByLabel('Lot of casein C1').inputValue()).toBe('C1-lot-2')
  })

  it('makes a specimen of each block, with what was measured of it', async () => {
    await page.getByLabel('Length of 1258').focus()
    await send('thirty')
    await page.getByRole('button', { name: /^Store the glue-up/ }).click()
    await page.getByText('“thirty” is not a number.').waitFor()
    await page.getByLabel('Length of 1258').focus()
    await send('30', '20')
    await page.getByRole('switch', { name: /not measured/ }).click()
    await page.getByRole('button', { name: 'Store the glue-up of 6 blocks' }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: /^Glued on/ }).waitFor()
    const { rows } = await own.engine.archive.waitingSpecimens(null, 10)
    expect(rows.map(({ fields }) => [fields.number, fields.areaMm2, fields.lot, fields.place, fields.notes])).toEqual([
      ['1215', 600.495, 'C1-lot-2', 'loft shelf 2', ''],
      ['1223', 604, 'C1-lot-2', 'loft shelf 2', ''],
      ['1231', 720, 'C1-lot-2', 'loft shelf 2', ''],
      ['1258', 600, 'C1-lot-2', 'loft shelf 2', ''],
      ['1266', 600, '', 'loft shelf 2', 'Size as planned, not measured.'],
      ['1274', 603.25, '', 'loft shelf 2', ''],
    ])
  })

  const numberIs = (number: string) =>
    page.waitForFunction((wanted) => document.querySelector('.at-hand-number')?.textContent === wanted, number)
  const breaking = () => own.engine.bench.state().breaking

  it('begins a session of the pull that it is asked for from, which the address keeps, in its kept random order', async () => {
    await own.engine.handlers['preferences.set']({ cautionsRead: true, operator: 'bench 1' })
    await at('#/due')(page)
    await page.getByRole('link', { name: /^Break: / }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: 'New breaking session' }).waitFor()
    await page.getByRole('button', { name: 'Begin with 4 specimens' }).waitFor()
    await page.reload()
    await page.getByRole('button', { name: 'Begin with 4 specimens' }).waitFor()
    await page.getByLabel(/Pull at once/).focus()
    await page.keyboard.press('Space')
    await page.getByRole('button', { name: 'Begin with 0 specimens' }).waitFor()
    expect(page.url()).not.toContain('pulls')
    await page.getByLabel(/^Scan a number/).focus()
    // A scanner sends Enter before it can be known what fits
    await page.keyboard.insertText('1266')
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Begin with 1 specimen', exact: true }).waitFor()
    await page.getByRole('button', { name: 'Take out 1266' }).click()
    await page.getByRole('button', { name: 'Begin with 0 specimens' }).waitFor()
    await page.getByLabel(/Pull at once/).focus()
    await page.keyboard.press('Space')
    await page.getByRole('button', { name: 'Begin with 4 specimens' }).focus()
    await page.keyboard.press('Enter')
    await page.getByText('0 of 4 broken').waitFor()
    await numberIs('1223')
    expect(await page.locator('.at-hand-next strong').textContent()).toBe('1258')
  })

  it('goes on to the next of the queue by itself, and breaks what is put in first by its number', async () => {
    const source = { kind: 'virtual' as const, scenario: 'brittle' as const, speed: 40, byItself: false }
    await own.engine.handlers['bench.connect'](procedures['bench.connect'].input.parse({ source }))
    await page.getByRole('heading', { name: 'Waiting for load' }).waitFor()
    await loadSpecimen(page)
    await page.getByText('1 of 4 broken').waitFor()
    await numberIs('1258')
    await page.keyboard.press('n')
    await numberIs('1215')
  })

  it('puts another block on the bench where its number is scanned, and says which number was none', async () => {
    const scan = (number: string) =>
      page.evaluate(
        (keys) => {
          for (const key of keys)
            document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }))
        },
        [...number, 'Enter'],
      )
    await scan('1231')
    await numberIs('1231')
    await scan('1232')
    await page.getByText('1232 is no number of a block').waitFor()
    await page.locator('.scanned').getByRole('button', { name: '1223', exact: true }).waitFor()
    await scan('1223')
    await page.getByText('The specimen 1223 broke already.').waitFor()
    await page.getByRole('button', { name: 'Dismiss' }).click()
    await scan('1215')
    await numberIs('1215')
  })

  it('passes a block over with a note, and offers it no more', async () => {
    await page.keyboard.press('p')
    await page.getByRole('heading', { name: 'Pass over 1215' }).waitFor()
    await page.keyboard.type('glue on the bearing face')
    await page.locator('dialog button[type=submit]').focus()
    await page.keyboard.press('Enter')
    await page.getByText('1 of 4 broken, 1 passed over').waitFor()
    await numberIs('1231')
    await loadSpecimen(page)
    await page.getByText('2 of 4 broken').waitFor()
    await numberIs('1258')
    await loadSpecimen(page)
    await page.getByText('3 of 4 broken, 1 passed over').waitFor()
    await page.getByText('All of the session are broken or passed over').waitFor()
  })

  it('ends with a page of its groups, what is suspicious and who was passed over', async () => {
    await page.locator('.session-line').focus()
    await page.keyboard.press('Enter')
    await page.getByRole('row', { name: /casein C1 · long grain to long grain · loft · at once 3 of 4 3/ }).waitFor()
    await page.getByText('passed over: glue on the bearing face').waitFor()
    expect(await page.getByText('faces not described').count()).toBe(3)
    await page.getByRole('button', { name: 'End the session' }).click()
    await page.locator('dialog button[type=submit]').click()
    await page.getByText(/· ended /).waitFor()
    expect(breaking()).toBeNull()
  })

  it('reported no error anywhere on the way', () => expect(opened.problems).toEqual([]))
})
