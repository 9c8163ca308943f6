import { expect, test } from 'vitest'
import { pulledStudy } from '#tests/archive/pulledStudy.ts'
import { openArchivePage } from '../harness/archivePage.ts'
import { chromiumPath } from '../harness/chromium.ts'

/** Pixels that a list has left beside the words of its choice and its arrow. */
function roomBesideChoice(element: HTMLElement): number {
  const select = element as HTMLSelectElement
  const { font, paddingLeft, paddingRight } = getComputedStyle(select)
  const pen = new OffscreenCanvas(1, 1).getContext('2d')!
  pen.font = font
  const words = pen.measureText(select.selectedOptions[0]!.text).width
  const arrowPx = 20
  return select.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight) - arrowPx - words
}

test.skipIf(chromiumPath === null)(
  'a group is found and opened by keyboard, down to a specimen; what is written shows; and the sheet is printed on A3',
  async () => {
    const { page, problems, engine } = await openArchivePage((database) => void pulledStudy(database))
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')

    await page.keyboard.press('f')
    await page.getByRole('link', { name: 'Overview' }).press('Enter')
    await page.getByRole('heading', { name: 'Overview', level: 1 }).waitFor()
    await page.locator('[data-place]').nth(3).waitFor()
    // One stop for all groups, behind the choice of what is shown
    await page.getByLabel('Age', { exact: true }).focus()
    await page.keyboard.press('Tab')
    const name = 'casein C1, long grain to long grain, tight joint, loft'
    expect(await focused()).toBe(`${name}, 6 months old: 0 broken; 1 lost; 2 on the shelf`)
    await page.keyboard.press('ArrowRight')
    expect(await focused()).toBe(`${name}, 8 months old: 3 broken, 10.00\u00a0MPa`)
    await page.locator('.overview-sight').getByText('8 months old').waitFor()
    await page.keyboard.press('ArrowLeft')
    await page.keyboard.press('Enter')
    await page.getByRole('dialog').getByText('on the shelf').first().waitFor()
    await page.keyboard.press('Escape')
    await expect.poll(focused).toContain('6 months old')

    const shelf = page.locator('[data-place]').first()
    await engine.handlers['specimens.withdraw']({
      ...{ specimenIds: [5], kind: 'withdrawn', by: 'bench', reason: 'fell too' },
    })
    await expect.poll(() => shelf.getAttribute('aria-label')).toContain('2 lost; 1 on the shelf')

    await page.evaluate(() => {
      window.print = () => {
        const rules = document.adoptedStyleSheets.flatMap((sheet) => [...sheet.cssRules].map(({ cssText }) => cssText))
        const paper = rules.find((rule) => rule.startsWith('@page'))
        document.title = `${document.querySelectorAll('.overview-print svg').length} on ${paper}`
      }
    })
    await page.getByRole('button', { name: 'Print on A3' }).click()
    await expect.poll(() => page.title()).toMatch(/^1 on @page.*size: (a3|A3) landscape/)

    // The browser's own print shows what the window shows, by its name
    await page.emulateMedia({ media: 'print' })
    await page.locator('.overview-print').waitFor({ state: 'detached' })
    expect(await page.getByText(/^All blocks, /).isVisible()).toBe(true)
    await page.emulateMedia({ media: 'screen' })

    await page.getByLabel('Table of means').check()
    const torn = page.getByLabel('Torn wood', { exact: true })
    await torn.selectOption('Censored, Weibull')
    expect(await torn.evaluate(roomBesideChoice)).toBeGreaterThan(0)
    await torn.selectOption('As observed')
    await page.locator('[data-place]').first().waitFor()
    expect(await page.locator('[data-place]').nth(1).getAttribute('aria-label')).toBe(
      `${name}, 8 months old: mean 10.00\u00a0MPa of 3 blocks`,
    )
    await page.locator('[data-place]').nth(1).press('Enter')
    await page.getByRole('dialog').getByRole('link').first().press('Enter')
    await page.getByRole('heading', { level: 1, name: /\d/ }).waitFor()
    expect(problems).toEqual([])
  },
)
