import { expect, test } from 'vitest'
import { pulledStudy } from '#tests/archive/pulledStudy.ts'
import { openArchivePage } from '../harness/archivePage.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { handsOn } from '../steps/hands.ts'

test.skipIf(chromiumPath === null)(
  'a pull is moved, a block found by typing and by scanning, and its label printed, all by keyboard',
  async () => {
    const { page, problems } = await openArchivePage((database) => void pulledStudy(database))
    const hands = handsOn(page, 'keyboard')

    await hands.press('e', 'Due')
    await page.getByRole('heading', { name: 'Due', level: 1 }).waitFor()
    await page.locator('option', { hasText: 'Loft and bilge' }).waitFor({ state: 'attached' })
    await hands.goTo(/^Study$/)
    await hands.key('ArrowDown')
    await page.getByRole('button', { name: 'Calendar file' }).waitFor()
    await hands.choose('Move: 28 Feb 2031')
    // A day is typed part by part, in the order of the browser's language
    await hands.type('03052031')
    await hands.fill('Reason', 'the school is closed')
    await hands.fill('Name or initials', 'bench')
    await hands.key('Enter')
    await page.getByText('moved from 28 Feb 2031 by bench: the school is closed').waitFor()
    await hands.choose('Skip: 5 Mar 2031')
    await hands.fill('Reason', 'too few left')
    await hands.choose(/^Skip$/)
    await page.getByText('skipped').first().waitFor()
    await hands.choose('Restore: 5 Mar 2031')
    await hands.fill('Reason', 'there are enough')
    await hands.choose(/^Restore$/)
    await page.getByRole('rowheader', { name: /^28 Feb 2031/ }).waitFor()
    await hands.choose('Add a pull')
    await hands.key('Escape')
    const file = page.waitForEvent('download')
    await hands.choose('Calendar file')
    expect((await file).suggestedFilename()).toBe('pulls-of-study-1.ics')
    await page.evaluate(() => {
      window.print = () => {
        document.title = 'printed the page'
      }
    })
    await hands.choose('Print')
    await expect.poll(() => page.title()).toBe('printed the page')
    await page.emulateMedia({ media: 'print' })
    await page.getByText('Taken on, by').first().waitFor()
    expect(await page.getByRole('heading', { name: 'Due: Loft and bilge' }).isVisible()).toBe(true)
    expect(await page.getByText('Done and skipped').isVisible()).toBe(false)
    await page.emulateMedia({ media: 'screen' })

    // The first label of the archive is 28; a scanner types where no field has the focus.
    await page.keyboard.press('g')
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label')))
      .toBe('Number of a block')
    await page.keyboard.type('29')
    await page.keyboard.press('Enter')
    await page.getByText('29 is no number of a block: its check digit does not fit.').waitFor()
    await page.getByRole('button', { name: '28', exact: true }).click()
    await page.getByRole('heading', { name: /28/ }).waitFor()
    await page.evaluate(() => {
      for (const key of [...'7940', 'Enter'])
        document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }))
    })
    await page.getByText('There is no block with the number 7940.').waitFor()

    await page.evaluate(() => {
      location.hash = '#/labels/1'
    })
    await page.getByText('11 labels on 1 page.').waitFor()
    await page.evaluate(() => {
      window.print = () => {
        document.title = `printed ${document.querySelectorAll('.labels-print .label-page').length}`
      }
    })
    await page.getByRole('button', { name: 'Print', exact: true }).click()
    await expect.poll(() => page.title()).toBe('printed 1')
    await page.getByRole('radio', { name: 'Own size' }).check()
    await page.getByLabel(/^Width/).fill('20')
    await page.getByText('The labels are too small for a code').waitFor()
    expect(problems).toEqual([])
  },
)
