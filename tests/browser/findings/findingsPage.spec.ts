import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { savedFile } from '../harness/savedFile.ts'
import { at } from '../screens/screenSteps.ts'

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
  const host = createScriptedHost()
  let opened: OpenedPage
  beforeAll(async () => {
    opened = await openPage({ host: 'loopback', engine: host })
    await at('#/findings')(opened.page)
    await opened.page.getByRole('group', { name: /^Ranking/ }).waitFor()
  })
  afterAll(async () => opened?.close())

  it('saves a figure as SVG with its typefaces, its colours and where it comes from', async () => {
    const { name, content } = await savedFile(opened.page, 'Save as SVG')
    expect(name).toBe('ranking-with-the-places-that-are-possible.svg')
    const text = content.toString('utf8')
    expect(text).toMatch(/@font-face\{font-family:Roboto;[^}]*src:url\("data:font\/woff2;base64,[A-Za-z0-9+/=]{40000,}/)
    expect(text).not.toMatch(/var\(|https?:\/\/(?!www\.w3\.org)/)
    expect(text).toContain('Torn wood: as observed.')
    expect(text).toContain('Simulated: nobody measured what is shown.')
  })

  it('saves it as PNG at print resolution', async () => {
    const { name, content } = await savedFile(opened.page, 'Save as PNG')
    expect(name).toBe('ranking-with-the-places-that-are-possible.png')
    const { width, height, drawn } = await looked(opened.page, content)
    expect(width).toBe(Math.ceil(725 * 3))
    expect(height).toBeGreaterThan(600)
    expect(drawn / (width * height)).toBeGreaterThan(0.005)
    expect(drawn / (width * height)).toBeLessThan(0.3)
  })

  it('saves all series over their ages as one figure', async () => {
    const { page } = opened
    await page.getByLabel('What changed with age?').check()
    await page
      .getByRole('group', { name: /^Strength against age/ })
      .nth(1)
      .waitFor()
    const { name, content } = await savedFile(page, 'Save as SVG')
    const text = content.toString('utf8')
    const [, count] = /^strength-against-age-(\d+)-series\.svg$/.exec(name) ?? []
    expect(text.match(/>strength, MPa</g)).toHaveLength(Number(count))
    expect(text).toContain('Torn wood: as observed.')
  })

  it('stands adhesives beside a reference over weighed conditions, and keeps that under a name', async () => {
    const { page } = opened
    await page.getByLabel('Which hold best overall?').check()
    await page.getByLabel('Reference adhesive').selectOption('resorcinol R2')
    await page.getByRole('button', { name: 'All but bilge' }).click()
    await page.getByText(/mean of the ratios in 1 condition,/).waitFor()
    await page.getByLabel('Weight of bilge').fill('0.5')
    await page.keyboard.press('Enter')
    await page
      .getByText(/loft \(weight 1\) and bilge \(weight 0\.5\)/)
      .first()
      .waitFor()
    await page.getByRole('button', { name: 'Keep this finding' }).click()
    await page.getByLabel(/^Name required/).fill('Overall, spring')
    await page.getByRole('dialog').getByRole('button', { name: 'Keep' }).click()
    await page.getByText('Kept findings: 1').click()
    await page.getByText('rests on the same 64 results as then').waitFor()
  })

  it('opens a kept finding as it was asked, and takes it off the list', async () => {
    const { page } = opened
    await page.getByLabel('Which hold best?').check()
    await page.getByRole('button', { name: 'Open Overall, spring' }).click()
    expect(await page.getByLabel('Weight of bilge').inputValue()).toBe('0.5')
    await page.getByRole('button', { name: 'Take Overall, spring off the list' }).click()
    await page.getByLabel(/^Reason/).fill('it was a trial')
    await page.getByRole('dialog').getByRole('button', { name: 'Take off the list' }).click()
    await expect.poll(() => page.getByText(/^Kept findings/).count()).toBe(0)
  })

  it('asks what changed of a finding when it is opened, and not before', async () => {
    const { page } = opened
    const asked = () => host.calls.filter(({ name }) => name === 'findings.changes').length
    host.addStaleFinding('Winter')
    await page.getByText('Kept findings: 1, 1 of them stale').click()
    await page.getByText('stale: its results changed since').waitFor()
    expect(asked()).toBe(0)
    await page.getByText('stale: its results changed since').click()
    await page.getByText('Since then 2 results came, 1 result went and 1 result changed.').waitFor()
    expect(asked()).toBe(1)
  })

  it('reported no error on the way', () => expect(opened.problems).toEqual([]))
})
