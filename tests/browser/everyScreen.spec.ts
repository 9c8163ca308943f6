import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { chromiumPath, type OpenBrowser, openBrowser } from './harness/chromium.ts'
import { type OpenedPage, openPage } from './harness/openPage.ts'
import { type Screen, screens, settle } from './screens/screens.ts'

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

type Finding = { id: string; impact: string | null; nodes: { html: string; failureSummary?: string }[] }

/** The accessibility findings that a person would meet as a barrier; `rules`: only those, and all of them without. */
async function barriers(page: Page, rules: string[] | null = null): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axeSource)
  const findings = await page.evaluate(async (only) => {
    const { axe } = globalThis as unknown as {
      axe: { run(where: Document, options: object): Promise<{ violations: Finding[] }> }
    }
    return (await axe.run(document, only === null ? {} : { runOnly: only })).violations
  }, rules)
  return findings
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ html, failureSummary }) => `${html} ${failureSummary}`).join(' | ')}`,
    )
}

/** Text that does not fit its place: the window scrolls sideways, or something cuts off what stands in it. */
async function clipped(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = []
    const { scrollWidth, clientWidth, scrollHeight, clientHeight } = document.documentElement
    if (scrollWidth > clientWidth || scrollHeight > clientHeight) found.push('the window scrolls')
    const benchSide = document.querySelector('.bench-side')
    if (benchSide !== null && benchSide.scrollHeight > benchSide.clientHeight + 1)
      found.push('the side of the bench scrolls')
    for (const element of document.querySelectorAll('body *')) {
      if (element.closest('.visually-hidden, svg, textarea, input, .plot') !== null) continue
      const cuts = getComputedStyle(element).overflowX !== 'visible'
      if (cuts && element.scrollWidth > element.clientWidth + 1)
        found.push(`${element.className} "${element.textContent}"`)
    }
    return found
  })
}

/** What asks for another typeface than those that the page brings, and would be as wide as the machine's happens to be. */
async function foreignType(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const own = new Set([...document.fonts].map(({ family }) => family.replaceAll('"', '')))
    const ownText = (element: Element) => [...element.childNodes].some(({ nodeType }) => nodeType === Node.TEXT_NODE)
    return [...document.querySelectorAll('body *')]
      .filter((element) => ownText(element) || element.matches('input, select, textarea'))
      .filter((element) => !own.has(getComputedStyle(element).fontFamily.split(',')[0]!.replaceAll('"', '')))
      .map(({ outerHTML }) => outerHTML.slice(0, 120))
  })
}

describe.skipIf(chromiumPath === null)('every screen', () => {
  const opened = new Map<string, OpenedPage>()
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
    expect(await clipped(page)).toEqual([expect.stringContaining('planted')])
    await close()
    opened.delete('settings')
  })

  it.concurrent.each(screens)(
    '$name has no barrier in either theme, cuts nothing off at either size, and reports no error',
    async (screen) => {
      const { host, page, problems, close } = await show(screen)
      // The browser asks for light, and so does the page.
      expect(await barriers(page), 'light theme').toEqual([])
      host.setPreferences({ theme: 'dark' })
      await settle(page)
      // The theme changes colours alone: nothing else has to be looked at twice.
      expect(await barriers(page, ['color-contrast']), 'dark theme').toEqual([])
      expect(await foreignType(page)).toEqual([])
      expect(await clipped(page), '1280 x 800').toEqual([])
      await page.setViewportSize({ width: 1920, height: 1080 })
      await settle(page)
      expect(await clipped(page), '1920 x 1080').toEqual([])
      expect(problems).toEqual([])
      await close()
      opened.delete(screen.name)
    },
  )
})
