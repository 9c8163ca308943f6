import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import type { Engine } from '#engine/core/engine.ts'
import { startLoopback } from '#shells/loopback/server.ts'
import { buildIfNeeded, projectFolder } from '#shells/start/build.ts'
import { type Look, type OpenBrowser, openBrowser } from './chromium.ts'
import { attachDesktopHost, standInAddress } from './desktopHost.ts'

export const hosts = ['loopback', 'desktop'] as const
export type HostName = (typeof hosts)[number]

export type OpenedPage = {
  page: Page
  /** Everything that went wrong in the page without anybody asking: console errors, thrown errors, failed requests. */
  problems: string[]
  /** Closes page, browser and host; the engine is left as it is. */
  close(): Promise<void>
}

/** Opens the built page in real Chromium behind one of the two hosts. */
export async function openPage(options: {
  host: HostName
  engine: Pick<Engine, 'handlers' | 'subscribe'>
  look?: Partial<Look>
  /** A browser that is open already and stays open; else one is opened for the page alone. */
  browser?: OpenBrowser
}): Promise<OpenedPage> {
  await buildIfNeeded('page')
  const browser = options.browser ?? (await openBrowser(options.look))
  const blank = options.browser === undefined ? browser.context.pages()[0] : undefined
  const page = blank ?? (await browser.context.newPage())
  const problems = watchForProblems(page)
  const { address, closeHost } = await startHost(page, options.host, options.engine)
  await page.goto(address)
  return {
    page,
    problems,
    async close() {
      await (options.browser === undefined ? browser.close() : page.close())
      await closeHost()
    },
  }
}

async function startHost(page: Page, host: HostName, engine: Pick<Engine, 'handlers' | 'subscribe'>) {
  if (host === 'loopback') {
    const loopback = await startLoopback({ engine, pageFolder: join(projectFolder, 'dist/renderer'), port: 0 })
    return { address: loopback.url, closeHost: loopback.close }
  }
  const disconnect = await attachDesktopHost(page, engine)
  return { address: standInAddress, closeHost: async () => disconnect() }
}

function watchForProblems(page: Page): string[] {
  const problems: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') problems.push(`console: ${message.text()}`)
  })
  page.on('pageerror', (error) => problems.push(`thrown: ${error.message}`))
  page.on('requestfailed', (request) => problems.push(`request: ${request.url()} ${request.failure()?.errorText}`))
  page.on('response', (response) => {
    if (response.status() >= 400) problems.push(`response: ${response.status()} ${response.url()}`)
  })
  return problems
}

/** A picture of what the window shows, to look at: tests/output/pictures/NAME.png. */
export async function takePicture(page: Page, name: string): Promise<string> {
  const folder = join(projectFolder, 'tests/output/pictures')
  mkdirSync(folder, { recursive: true })
  const path = join(folder, `${name}.png`)
  await page.screenshot({ path })
  return path
}
