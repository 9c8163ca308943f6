import { expect, test } from 'vitest'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { pulledStudy } from '#tests/archive/pulledStudy.ts'
import { morning, specimenFields } from '#tests/archive/storedStudy.ts'
import { openArchivePage } from '../harness/archivePage.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { handsOn } from '../steps/hands.ts'

const epoxies = ['E-1', 'E-2'].map((number) =>
  specimenFields(number, { adhesive: 'epoxy E4', exposure: 'bilge', place: 'box 3' }),
)

test.skipIf(chromiumPath === null)(
  'a list is filtered, the filter kept, columns chosen, a row opened and left, labels printed of a selection, and levels of a study chosen, by keyboard',
  async () => {
    const { page, problems } = await openArchivePage((database) => {
      pulledStudy(database)
      addSpecimens(database, epoxies, morning, 'bench')
    })
    const hands = handsOn(page, 'keyboard')
    const counted = (words: string) => page.locator('.list-tools-title p', { hasText: words }).waitFor()

    await hands.press('s', 'Specimens')
    await counted('13 specimens')
    await hands.choose('Filter')
    await hands.fill('Adhesive', 'epo')
    await hands.key('ArrowDown', 'Enter', 'Enter')
    await counted('2 specimens')
    await hands.fill('Keep this one as', 'epoxies')
    await hands.key('Enter')
    await page.locator('option', { hasText: 'epoxies' }).waitFor({ state: 'attached' })
    await hands.choose('Show any')
    await counted('13 specimens')
    await hands.goTo('Kept filters')
    await hands.key('ArrowDown')
    await counted('2 specimens')
    await hands.fill('Gap from', 'wide')
    await page.getByText('“wide” is not a number.').waitFor()
    await hands.key('Escape')
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Filter (1)')

    await hands.choose('Columns')
    await hands.goTo(/^Place$/)
    await hands.key('Space')
    await hands.choose('Done')
    await page.getByRole('columnheader', { name: 'Place' }).waitFor()

    await hands.key('/', 'ArrowDown', 'ArrowDown', 'Enter')
    await page.getByRole('heading', { level: 1, name: 'E-2' }).waitFor()
    await hands.choose('Withdraw')
    await hands.fill('What became of it', 'fell from the shelf')
    await hands.fill('Name or initials', 'bench')
    await hands.key('Enter')
    await page.getByText('Withdrawn: fell from the shelf').waitFor()
    await hands.choose('Take back')
    await hands.fill('Why it comes back', 'it held')
    await hands.fill('Name or initials', 'bench')
    await hands.key('Enter')
    await page.getByRole('button', { name: 'Withdraw' }).waitFor()
    await page.goBack()
    await counted('2 specimens')
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-rowindex'))).toBe('3')
    expect(new URL(page.url()).hash).toBe('#/specimens?adhesive=epoxy+E4')
    await page.reload()
    await counted('2 specimens')
    await page.getByRole('columnheader', { name: 'Place' }).waitFor()

    await hands.key('/', 'ArrowDown', 'Control+a')
    await page.getByText('2 selected').waitFor()
    await hands.choose('Move')
    await hands.fill('Place on the shelf', 'box 4')
    await hands.fill('Why they are moved', 'box 3 is full')
    await hands.fill('Name or initials', 'bench')
    await hands.key('Enter')
    await page.getByText('2 selected. 2 moved').waitFor()
    await page.getByRole('cell', { name: 'box 4' }).first().waitFor()
    await hands.choose('Print labels')
    await page.getByText('2 labels on 1 page.').waitFor()

    await hands.press('d', 'Studies')
    await hands.choose('Loft and bilge')
    await hands.choose('Glue-up on 31 Aug 2030')
    await page.getByRole('heading', { level: 1, name: /31 Aug 2030/ }).waitFor()
    await hands.choose('Correct')
    await hands.fill('Temperature', '17')
    await hands.fill('Reason for the correction', 'misread')
    await hands.key('Enter')
    await page.getByText('Before: Temperature: –').waitFor()
    await page.goBack()
    await hands.choose('Due')
    await page.getByRole('heading', { level: 1, name: 'Due' }).waitFor()
    await page.getByText('2 of casein C1').waitFor()
    await page.goBack()
    await hands.choose('Findings')
    await page.getByRole('option', { name: 'Loft and bilge' }).waitFor({ state: 'attached' })
    expect(await page.getByLabel('Study').inputValue()).toBe('1')
    await page.goBack()
    await hands.choose('Studies')
    await hands.choose('Plan a study')
    await hands.fill('Adhesives', 'epo')
    await hands.key('ArrowDown', 'Enter')
    await page.getByRole('button', { name: 'Take epoxy E4 out' }).waitFor()
    await hands.type('hide glue')
    await hands.key('Enter')
    await page.getByText('New: it is entered in the catalogue too.').waitFor()
    expect(problems).toEqual([])
  },
)
