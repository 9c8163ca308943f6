import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'

/** What comes of the first button of a name that saves a file. */
export async function savedFile(page: Page, button: string): Promise<{ name: string; content: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).first().click(),
  ])
  return { name: download.suggestedFilename(), content: await readFile(await download.path()) }
}
