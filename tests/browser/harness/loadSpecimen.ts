import type { Page } from 'playwright-core'

/** Loads the virtual specimen by its key, which does nothing while the bench is busy or moves to the next one. */
export async function loadSpecimen(page: Page): Promise<void> {
  await page.locator('.virtual .button-primary[aria-disabled="false"]').waitFor()
  await page.keyboard.press('l')
}
