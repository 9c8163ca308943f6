import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { routeOf } from '#renderer/routes/route.ts'
import { routeTable } from '#renderer/routes/routeTable.ts'
import { chromiumPath, type OpenBrowser, openBrowser } from './harness/chromium.ts'
import { layoutFaults } from './harness/layoutFaults.ts'
import { type OpenedPage, openPage } from './harness/openPage.ts'
import { bareDays, barriers, foreignType, narrowSizes, wholeSizes } from './harness/screenFaults.ts'
import { pagesOfArchive } from './programme/pagesOfArchive.ts'
import { type Screen, screens, settle } from './screens/screens.ts'

/** A window that scrolls as a whole, or a side of the bench that has to be scrolled: both show all that they have at these sizes. */
async function scrolls(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const places = [document.documentElement, ...document.querySelectorAll('.bench-side')]
    return places
      .filter((place) => place.scrollHeight > place.clientHeight + 1)
      .map((place) => `${place.className} scrolls`)
  })
}

/** Plots that are too small to be read. */
async function smallPlots(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('main .plot')]
      .map((plot) => plot.getBoundingClientRect())
      .filter(({ width, height }) => width <= 400 || height <= 80)
      .map(({ width, height }) => `${width} x ${height}`),
  )
}

describe.skipIf(chromiumPath === null)('every screen', () => {
  const opened = new Map<string, OpenedPage>()
  const pages = new Set<string>()
  let browser: OpenBrowser
  beforeAll(async () => {
    browser = await openBrowser()
  })
  afterAll(async () => {
    for (const page of opened.values()) await page.close()
    await browser?.close()
  })

  async function show(screen: Screen) {
    const host = screen.host()
    const page = await openPage({ host: 'loopback', engine: host, browser })
    opened.set(screen.name, page)
    await screen.show(page.page, host)
    return { host, ...page }
  }

  it('would notice a barrier and a text that is cut off', async () => {
    const { page, close } = await show(screens.find(({ name }) => name === 'settings')!)
    await page.evaluate(() => {
      const planted = document.createElement('div')
      planted.innerHTML = '<input><p class="planted">a text that does not fit</p>'
      document.querySelector('main')?.append(planted)
      const { style } = document.querySelector('.planted') as HTMLElement
      style.width = '2rem'
      style.overflow = 'hidden'
      style.whiteSpace = 'nowrap'
    })
    expect(await barriers(page)).toEqual([expect.stringContaining('label')])
    expect(await layoutFaults(page)).toEqual([expect.stringContaining('cut off: p.planted')])
    await close()
    opened.delete('settings')
  })

  it('would notice texts that lie on each other, a control out of reach, and a window that scrolls sideways', async () => {
    const { page, close } = await show(screens.find(({ name }) => name === 'settings')!)
    await page.evaluate(() => {
      const planted = document.createElement('div')
      planted.innerHTML = '<p>one text</p><p class="lifted">another</p><button class="covered">far</button>'
      document.querySelector('main')?.append(planted)
      ;(planted.querySelector('.lifted') as HTMLElement).style.marginTop = '-1em'
      ;(planted.querySelector('.covered') as HTMLElement).style.cssText = 'position: relative; left: 200vw'
    })
    const found = await layoutFaults(page)
    expect(found).toContainEqual(expect.stringContaining('scrolls sideways'))
    expect(found).toContain('on each other: "one text" and "another"')
    await page.evaluate(() => {
      const { style } = document.querySelector('.covered') as HTMLElement
      style.cssText = 'position: fixed; left: 200vw; top: 0'
    })
    expect(await layoutFaults(page)).toContainEqual(expect.stringContaining('out of reach: button.covered'))
    await close()
    opened.delete('settings')
  })

  it('leaves the scale of wood failure and all below it where they are when it is pressed', async () => {
    const { page, close } = await show(screens.find(({ name }) => name === 'bench-broke')!)
    const tops = () =>
      page.evaluate(() =>
        ['.wood-failure-scale', '.pattern .choice-options', '.note-line'].map(
          (place) => document.querySelector(place)!.getBoundingClientRect().top,
        ),
      )
    const before = await tops()
    await page.locator('.wood-failure-scale').click()
    await page
      .locator('.wood-failure-head')
      .getByText(/^\d+ %$/)
      .waitFor()
    expect(await tops()).toEqual(before)
    for (const pattern of await page.locator('.pattern label').all()) {
      await pattern.click()
      expect(await tops()).toEqual(before)
    }
    await close()
    opened.delete('bench-broke')
  })

  it.concurrent.each(screens)(
    '$name has no barrier in either theme, has all in reach and nothing cut off, overlapping or sideways at any size, and reports no error',
    async (screen) => {
      const { host, page, problems, close } = await show(screen)
      // The browser asks for light, and so does the page.
      expect(await barriers(page), 'light theme').toEqual([])
      host.setPreferences({ theme: 'dark' })
      await settle(page)
      // The theme changes colours alone: nothing else has to be looked at twice.
      expect(await barriers(page, ['color-contrast']), 'dark theme').toEqual([])
      expect(await foreignType(page)).toEqual([])
      expect(await bareDays(page)).toEqual([])
      for (const size of [...wholeSizes, ...narrowSizes]) {
        await page.setViewportSize(size)
        await settle(page)
        const where = `${size.width} x ${size.height}`
        expect(await layoutFaults(page), where).toEqual([])
        if (wholeSizes.includes(size)) expect(await scrolls(page), where).toEqual([])
        else expect(await smallPlots(page), where).toEqual([])
      }
      expect(problems).toEqual([])
      pages.add(routeOf(new URL(page.url()).hash).page)
      await close()
      opened.delete(screen.name)
    },
  )

  it('leaves out no page of the program but those that are looked at on a real archive', () => {
    expect(routeTable.map(({ page }) => page).filter((page) => !pages.has(page))).toEqual(pagesOfArchive)
  })
})
