import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from './harness/chromium.ts'
import { type OpenedPage, openPage } from './harness/openPage.ts'
import { at } from './screens/screenSteps.ts'

const figure = (page: Page) => page.getByRole('group', { name: /^Deviations of the check weight/ })
const readOut = (page: Page) => figure(page).locator('[aria-live]')

describe.skipIf(chromiumPath === null)('a figure on a page', () => {
  let opened: OpenedPage
  beforeAll(async () => {
    const host = createScriptedHost()
    host.calibration.withCalibrations()
    host.calibration.withChecks(17, 0.92)
    opened = await openPage({ host: 'loopback', engine: host })
    await at('#/calibration/check')(opened.page)
    await figure(opened.page).waitFor()
  })
  afterAll(async () => opened?.close())

  it('says what it shows to those who do not see it', async () => {
    const picture = figure(opened.page).getByRole('img')
    expect(await picture.locator('> title').textContent()).toMatch(/^Deviations of the check weight/)
    expect(await picture.locator('> desc').textContent()).toContain('Outside: check 17.')
  })

  it('is drawn in the colours of the page, which may carry no inline style', async () => {
    const strokes = await figure(opened.page)
      .locator('.ink-limit, .ink-ring, .ink-joined')
      .evaluateAll((all) => all.map((one) => getComputedStyle(one).stroke))
    expect(strokes).not.toContain('none')
    expect(new Set(strokes).size).toBe(3)
  })

  it('reads its points by arrow keys', async () => {
    const { page } = opened
    await figure(page).focus()
    await page.keyboard.press('End')
    expect(await readOut(page).textContent()).toMatch(/^17, .*outside$/)
    await page.keyboard.press('ArrowLeft')
    expect(await readOut(page).textContent()).toMatch(/^16, /)
    await page.keyboard.press('Escape')
    expect(await readOut(page).textContent()).toBe('')
  })

  it('reads the point that is nearest to the pointer, and shows its words', async () => {
    const { page } = opened
    const ring = (await figure(page).locator('.ink-ring').boundingBox())!
    await page.mouse.move(ring.x + ring.width / 2 + 4, ring.y + ring.height / 2)
    await expect.poll(() => readOut(page).textContent()).toMatch(/^17, /)
    expect(await figure(page).locator('.figure-read-out text').allTextContents()).toEqual([
      expect.stringMatching(/^17, /),
    ])
    await page.mouse.move(2, 2)
    await expect.poll(() => readOut(page).textContent()).toBe('')
  })

  it('reported no error on the way', () => expect(opened.problems).toEqual([]))
})
