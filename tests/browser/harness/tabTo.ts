import type { Page } from 'playwright-core'

/** From one end of the fullest page to the other. */
const mostSteps = 120

/** Presses Tab, or Shift and Tab, until what has the focus fits the selector. */
export async function tabTo(page: Page, selector: string, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  for (let i = 0; i < mostSteps; i++) {
    await page.keyboard.press(key)
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted), selector)) return
  }
  throw new Error(`${key} does not reach ${selector}`)
}
