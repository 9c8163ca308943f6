import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { at } from '../screens/screenSteps.ts'

async function saved(page: Page, button: string): Promise<{ name: string; content: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).first().click(),
  ])
  return { name: download.suggestedFilename(), content: await readFile(await download.path()) }
}

/** What an image holds: its size, and how many of its pixels are not white. */
function looked(page: Page, png: Buffer): Promise<{ width: number; height: number; drawn: number }> {
  return page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0))
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }))
    const canvas = new OffscreenCanvas(image.width, image.height)
    const context = canvas.getContext('2d')!
    context.drawImage(image, 0, 0)
    const { data } = context.getImageData(0, 0, image.width, image.height)
    let drawn = 0
    for (let i = 0; i < data.length; i += 4) if (data[i]! < 200) drawn += 1
    return { width: image.width, height: image.height, drawn }
  }, png.toString('base64'))
}

describe.skipIf(chromiumPath === null)('the page of findings', () => {
  let opened: OpenedPage
  beforeAll(async () => {
    opened = await openPage({ host: 'loopback', engine: createScriptedHost() })
    await at('#/findings')(opened.page)
    await opened.page.getByRole('group', { name: /^Ranking/ }).waitFor()
  })
  afterAll(async () => opened?.close())

  it('saves a figure as SVG with its typefaces, its colours and where it comes from', async () => {
    const { name, content } = await saved(opened.page, 'Save as SVG')
    expect(name).toBe('ranking-with-the-places-that-are-possible.svg')
    const text = content.toString('utf8')
    expect(text).toMatch(/@font-face\{font-family:Roboto;[^}]*src:url\("data:font\/woff2;base64,[A-Za-z0-9+/=]{40000,}/)
    expect(text).not.toMatch(/var\(|https?:\/\/(?!www\.w3\.org)/)
    expect(text).toContain('Torn wood: as observed.')
    expect(text).toContain('Simulated: nobody measured these results.')
  })

  it('saves it as PNG at print resolution', async () => {
    const { name, content } = await saved(opened.page, 'Save as PNG')
    expect(name).toBe('ranking-with-the-places-that-are-possible.png')
    const { width, height, drawn } = await looked(opened.page, content)
    expect(width).toBe(Math.ceil(725 * 3))
    expect(height).toBeGreaterThan(600)
    expect(drawn / (width * height)).toBeGreaterThan(0.005)
    expect(drawn / (width * height)).toBeLessThan(0.3)
  })
})
