import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Loopback, startLoopback } from '#shells/loopback/server.ts'
import { buildIfNeeded, projectFolder } from '#shells/start/build.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath, type OpenBrowser, openBrowser } from './harness/chromium.ts'

describe.skipIf(chromiumPath === null)('the page in a browser', () => {
  let loopback: Loopback
  let browser: OpenBrowser
  let page: Page

  beforeEach(async () => {
    await buildIfNeeded('page')
    loopback = await startLoopback({
      engine: createScriptedHost(),
      pageFolder: join(projectFolder, 'dist/renderer'),
      port: 0,
    })
    browser = await openBrowser()
    page = browser.context.pages()[0] ?? (await browser.context.newPage())
    await page.goto(loopback.url)
    await connected(page)
  })
  afterEach(async () => {
    await browser.close()
    await loopback.close()
  })

  const connected = (of: Page) => of.getByRole('heading', { name: 'Waiting for load' }).waitFor()
  const home = () => new URL('/', loopback.url).href
  const token = () => new URL(loopback.url).searchParams.get('token') ?? 'none'

  it('has no ticket in its address, and is let in again when it is loaded anew', async () => {
    expect(page.url()).not.toContain(token())
    await page.reload()
    await connected(page)
  })

  it('keeps its secret where another port of this computer, which gets the cookie, cannot read it', async () => {
    const heard: string[] = []
    const other = createServer((request, response) => {
      heard.push(request.headers.cookie ?? '')
      response.setHeader('Content-Type', 'text/html').end('<title>other</title>')
    })
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve))
    await page.goto(`http://127.0.0.1:${(other.address() as AddressInfo).port}/`)
    expect(heard[0]).toContain('breakledger-')
    expect(await page.evaluate(() => Object.keys(sessionStorage))).toEqual([])
    await page.goto(home())
    await connected(page)
    other.closeAllConnections()
    other.close()
  })

  it('tells a second browser that the address was used', async () => {
    const second = await openBrowser()
    const there = second.context.pages()[0] ?? (await second.context.newPage())
    const answer = await there.goto(loopback.url)
    expect(answer?.status()).toBe(403)
    await there.getByText('works once, in one browser').waitFor()
    await second.close()
  })

  it('tells a tab that was not opened by the address why it is not let in', async () => {
    const tab = await browser.context.newPage()
    await tab.goto(home())
    await tab.getByText('This tab was not opened by the address').waitFor()
    expect(await tab.getByText('Connecting').count()).toBe(0)
  })

  it('names a cookie that somebody planted under the name of ours instead of connecting for ever', async () => {
    const name = `breakledger-${loopback.port}`
    const planted = { name, value: 'planted', domain: '127.0.0.1' }
    await browser.context.addCookies([{ ...planted, path: '/socket' }])
    await page.reload()
    await page.getByText('has left a cookie under the name of ours').waitFor()
    expect(await page.getByText('Connecting').count()).toBe(0)
    await browser.context.addCookies([{ ...planted, path: '/' }])
    await page.reload()
    await page.getByText('has left a cookie under the name of ours').waitFor()
  })
})
