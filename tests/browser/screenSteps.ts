import type { Page } from 'playwright-core'
import type { ScriptedHost } from '#tests/fakes/scriptedHost.ts'

/** A screen in an exact state. */
export type Screen = { name: string; host(): ScriptedHost; show(page: Page, host: ScriptedHost): Promise<void> }

/** Lets the page take in what was sent: longer than the pace of the numerals and a search. */
export async function settle(page: Page): Promise<void> {
  await page.waitForTimeout(250)
}

/** Goes to an address. */
export const at = (hash: string) => async (page: Page) => {
  await page.waitForSelector('.frame')
  await page.evaluate((to) => {
    location.hash = to
  }, hash)
  await settle(page)
}
