import type { Page } from 'playwright-core'
import type { ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'

/** A screen in an exact state. */
export type Screen = { name: string; host(): ScriptedHost; show(page: Page, host: ScriptedHost): Promise<void> }

/**
 * Waits until the page has taken in what was sent: until nothing in it has changed for longer than the pace of the numerals
 * and of a search, by the page's own timers, which a loaded machine delays like those that it waits for.
 */
export async function settle(page: Page): Promise<void> {
  await page.evaluate(
    (quietMs) =>
      new Promise<void>((resolve) => {
        const atRest = () => {
          observer.disconnect()
          requestAnimationFrame(() => requestAnimationFrame(() => resolve()))
        }
        let timer = setTimeout(atRest, quietMs)
        const observer = new MutationObserver(() => {
          clearTimeout(timer)
          timer = setTimeout(atRest, quietMs)
        })
        observer.observe(document, { subtree: true, childList: true, characterData: true, attributes: true })
      }),
    250,
  )
}

/** Goes to an address. */
export const at = (hash: string) => async (page: Page) => {
  await page.waitForSelector('.frame')
  await page.evaluate((to) => {
    location.hash = to
  }, hash)
  await settle(page)
}
