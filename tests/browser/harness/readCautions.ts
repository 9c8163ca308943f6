import type { Page } from 'playwright-core'

const cautions = (page: Page) => page.getByRole('dialog', { name: 'Before you load a specimen' })

/** Until the cautions have gone, which they do when it is stored that they were read; no key of the page acts before. */
export const cautionsGone = (page: Page) => cautions(page).waitFor({ state: 'detached' })

/** Says that the cautions were read. */
export async function readCautions(page: Page): Promise<void> {
  await cautions(page).getByRole('button', { name: 'I have read this' }).click()
  await cautionsGone(page)
}
