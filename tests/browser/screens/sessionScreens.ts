import type { Page } from 'playwright-core'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { at, type Screen, settle } from './screenSteps.ts'

/** Sends values as calipers do, each with Enter. */
async function measure(page: Page, values: readonly string[]): Promise<void> {
  await page.locator('[data-cell]').first().focus()
  for (const value of values) {
    await page.keyboard.type(value)
    await page.keyboard.press('Enter')
  }
  await settle(page)
}

/** The bench in the middle of a breaking session. */
function inSession() {
  const host = createScriptedHost()
  const breaking = { breakingSessionId: 1, title: 'Loft and bilge, 6 months', specimens: 24, broken: 6 }
  host.setBench({ breaking: { ...breaking, skipped: 1, withdrawn: 0 }, waitingSpecimens: 17 })
  return host
}

/** Glue-ups and breaking sessions. */
export const sessionScreens: readonly Screen[] = [
  { name: 'glue-ups', host: () => createScriptedHost(), show: at('#/glue-ups') },
  { name: 'glue-up', host: () => createScriptedHost(), show: at('#/glue-ups/1') },
  { name: 'glue-up-which', host: () => createScriptedHost(), show: at('#/glue-ups/new') },
  {
    name: 'glue-up-calipers',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/glue-ups/new/1')(page)
      await page.getByLabel('All groups').check()
      await measure(page, ['30.1', '19,95', '1 3/16 in', '20.05', '302', '302', '20', 'thirty'])
    },
  },
  {
    name: 'glue-up-own',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/glue-ups/new')(page)
      await page.getByLabel('Study').selectOption('')
      await page.getByLabel('Adhesive').fill('hide glue')
      await page.getByLabel('Numbers on the blocks').fill('K-1\nK-2\nK-3')
      await measure(page, ['30', '20'])
      await page.getByRole('button', { name: /Store the glue-up/ }).scrollIntoViewIfNeeded()
    },
  },
  { name: 'breakings', host: () => createScriptedHost(), show: at('#/breaking') },
  { name: 'breaking', host: () => createScriptedHost(), show: at('#/breaking/1') },
  {
    name: 'breaking-new',
    host: () => createScriptedHost(),
    show: async (page) => {
      await at('#/breaking/new')(page)
      await page.getByLabel(/Pull after 6 months/).check()
      await page.getByLabel('Scan a number').fill('C1-LL-02')
      await settle(page)
      await page.keyboard.press('Enter')
      await settle(page)
    },
  },
  {
    name: 'bench-session',
    host: inSession,
    show: async (page, host) => {
      await page.waitForSelector('.bench')
      host.addBreak(4812)
      await settle(page)
    },
  },
  {
    name: 'bench-session-passing',
    host: inSession,
    show: async (page) => {
      await page.waitForSelector('.bench')
      await page.keyboard.press('p')
      await settle(page)
    },
  },
]
