import { expect, test } from 'vitest'
import { routeOf } from '#renderer/routes/route.ts'
import { pulledStudy } from '#tests/archive/pulledStudy.ts'
import { openArchivePage } from '../harness/archivePage.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { layoutFaults } from '../harness/layoutFaults.ts'
import { bareDays, barriers, foreignType, narrowSizes, wholeSizes } from '../harness/screenFaults.ts'
import { at, settle } from '../screens/screenSteps.ts'
import { pagesOfArchive } from './pagesOfArchive.ts'

/** Where to look, what is there once all has come, and a dialog of the page. */
const looks = [
  { hash: '#/due', there: 'Print', dialog: null },
  { hash: '#/due/1', there: 'Add a pull', dialog: /^Move:/ },
  { hash: '#/due/1', there: 'Add a pull', dialog: 'Add a pull' },
  { hash: '#/labels/1', there: 'Print', dialog: null },
  { hash: '#/catalogue', there: /^Add/, dialog: /^Add/ },
  { hash: '#/catalogue/1', there: 'Correct', dialog: null },
  { hash: '#/catalogue/1', there: 'Correct', dialog: 'Correct' },
  { hash: '#/catalogue/1', there: 'Correct', dialog: /^Merge/ },
]

test.skipIf(chromiumPath === null)(
  'pulls, labels and the catalogue have no barrier in either theme, and nothing cut off, overlapping or sideways at any size',
  async () => {
    const { page, problems } = await openArchivePage((database) => void pulledStudy(database))
    const seen = new Set<string>()
    for (const { hash, there, dialog } of looks) {
      const where = `${hash} ${dialog ?? ''}`
      await at(hash)(page)
      await page.getByRole('button', { name: there }).first().waitFor()
      if (dialog !== null) {
        await page.getByRole('button', { name: dialog }).first().click()
        await page.locator('dialog[open]').waitFor()
      }
      await page.emulateMedia({ colorScheme: 'light' })
      await settle(page)
      expect(await barriers(page), `${where}, light theme`).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      await settle(page)
      expect(await barriers(page, ['color-contrast']), `${where}, dark theme`).toEqual([])
      expect(await foreignType(page), where).toEqual([])
      expect(await bareDays(page), where).toEqual([])
      for (const size of [...wholeSizes, ...narrowSizes]) {
        await page.setViewportSize(size)
        await settle(page)
        expect(await layoutFaults(page), `${where} at ${size.width} x ${size.height}`).toEqual([])
      }
      seen.add(routeOf(new URL(page.url()).hash).page)
      if (dialog !== null) await page.keyboard.press('Escape')
      await at('#/settings')(page)
    }
    expect([...seen]).toEqual(pagesOfArchive)
    expect(problems).toEqual([])
  },
)
