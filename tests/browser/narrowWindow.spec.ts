import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { chromiumPath, type OpenBrowser, openBrowser } from './harness/chromium.ts'
import { openPage } from './harness/openPage.ts'
import { settle } from './screens/screenSteps.ts'
import { screens } from './screens/screens.ts'

/** What is wider than its place and would have to be scrolled sideways; a table or a plot that scrolls alone is not meant. */
async function sideways(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const places = [document.documentElement, ...document.querySelectorAll('main, .frame-head, .reevaluation, dialog')]
    return places
      .filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth)
      .map((place) => `${place.tagName}.${place.className}: ${place.scrollWidth} in ${place.clientWidth}`)
  })
}

/** A window of 1280 x 800 at twice its size is one of 640 x 400. */
describe.skipIf(chromiumPath === null)('a window enlarged to twice its size', () => {
  let browser: OpenBrowser
  beforeAll(async () => {
    browser = await openBrowser({ width: 640, height: 400 })
  })
  afterAll(async () => browser?.close())

  it.each([
    ...['curve', 'curve-views', 'curve-pick', 'curve-premature', 'curve-evaluations', 'curve-declare'],
    ...['breaks-overruled', 'specimens-overruled', 'specimen-overruled'],
    ...['compare-group', 'compare-chosen'],
    ...['reevaluations-list', 'reevaluation-waiting', 'reevaluation-new', 'reevaluation-adopt'],
  ])(
    'shows %s without scrolling sideways, and still has it all',
    async (name) => {
      const screen = screens.find((one) => one.name === name)!
      const host = screen.host()
      const { page, problems, close } = await openPage({ host: 'loopback', engine: host, browser })
      await page.setViewportSize({ width: 640, height: 400 })
      await screen.show(page, host)
      await settle(page)
      expect(await sideways(page)).toEqual([])
      for (const plot of await page.locator('main .plot').all()) {
        const box = await plot.boundingBox()
        expect(box?.width).toBeGreaterThan(400)
        expect(box?.height).toBeGreaterThan(80)
      }
      expect(problems).toEqual([])
      await close()
    },
    30_000,
  )
})
