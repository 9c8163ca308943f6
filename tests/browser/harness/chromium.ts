import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium } from 'playwright-core'
import { findChromium } from '#exchange/pdf/findChromium.ts'

/** Where Chromium is, or null; a browser test is skipped without it, and `npm test` says so in words. */
export const chromiumPath = findChromium(process.env)

export type Look = { width: number; height: number; theme: 'light' | 'dark' }

export type OpenBrowser = { context: BrowserContext; close(): Promise<void> }

/** A browser of its own with a fresh profile, which makes no connection of its own accord. `close` removes the profile too. */
export async function openBrowser(look: Partial<Look> = {}): Promise<OpenBrowser> {
  if (chromiumPath === null) throw new Error('There is no Chromium; set CHROMIUM_PATH.')
  const profile = mkdtempSync(join(tmpdir(), 'breakledger-browser-'))
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: chromiumPath,
    headless: true,
    viewport: { width: look.width ?? 1280, height: look.height ?? 800 },
    colorScheme: look.theme ?? 'light',
    locale: 'en-GB',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      // A camera that shows a drawn picture; it wants permission like any other.
      '--use-fake-device-for-media-stream',
      '--disable-quic',
      '--disable-sync',
      '--disable-component-update',
      '--disable-background-networking',
      '--no-first-run',
    ],
  })
  // Against a hang alone: a loaded machine may take its time.
  context.setDefaultTimeout(240_000)
  return {
    context,
    async close() {
      await context.close()
      rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 })
    },
  }
}
