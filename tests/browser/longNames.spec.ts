import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { scriptComparison } from '#tests/fakes/scripted/scriptedComparison.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from './harness/chromium.ts'
import { type OpenedPage, openPage } from './harness/openPage.ts'
import { at, settle } from './screens/screenSteps.ts'

const number = (last: number) => `EPOXY-E4-LONGGRAIN-LONGGRAIN-BILGE-000${last}X`
const adhesive = 'cross-linking polyvinyl acetate with hardener, winter blend V5'

/** Numbers of forty characters and adhesives of sixty, which differ in their last letters only. */
describe.skipIf(chromiumPath === null)('long names', () => {
  let opened: OpenedPage
  beforeAll(async () => {
    const host = createScriptedHost()
    for (let i = 1; i <= 5; i++) host.addBreak(4000 + 100 * i, { number: number(i), adhesive })
    // Rows that are built below the edge of the window, each with words that are only read out
    for (let i = 0; i < 25; i++) host.addBreak(3000 + i)
    for (let breakId = 1; breakId <= 24; breakId++)
      await host.handlers['breaks.pickPeak']({ breakId, timeS: 8.6, by: 'bench 1', reason: 'a spike' })
    opened = await openPage({ host: 'loopback', engine: scriptComparison(host) })
  })
  afterAll(async () => opened?.close())

  it('stand in one line above the buttons of a break', async () => {
    const { page } = opened
    await at('#/breaks/1')(page)
    const title = page.getByRole('heading', { level: 1 })
    const { height, width } = (await title.boundingBox())!
    expect(height).toBeLessThan(50)
    expect(width).toBeGreaterThan(700)
    const last = (await page.getByRole('button', { name: 'Set aside' }).boundingBox())!
    expect(last.x + last.width).toBeLessThan(1280)
  })

  it('leave the buttons beside a short one', async () => {
    const { page } = opened
    await at('#/breaks/10')(page)
    const title = (await page.getByRole('heading', { level: 1 }).boundingBox())!
    const last = (await page.getByRole('button', { name: 'Set aside' }).boundingBox())!
    expect(last.y).toBeLessThan(title.y + 60)
  })

  it('are written out to their end in a comparison', async () => {
    const { page } = opened
    await at('#/compare/1,2,3,12')(page)
    const link = page.getByRole('link', { name: number(2) })
    await link.waitFor()
    const cut = await link.evaluate((element) => {
      const cell = element.closest('th')!
      return cell.scrollWidth > cell.clientWidth || cell.scrollHeight > cell.clientHeight
    })
    expect(cut).toBe(false)
  })

  it('add no height to the window with what is only read out', async () => {
    const { page } = opened
    await at('#/breaks')(page)
    await page.getByRole('row', { name: /break 30/ }).waitFor()
    await page.locator('.long-table').evaluate((table) => table.scrollTo(0, 200))
    await settle(page)
    expect(await page.locator('.overruled-mark').count()).toBeGreaterThan(5)
    const { windowAdds, pageAdds } = await page.evaluate(() => {
      const main = document.querySelector('main')!
      const { scrollHeight, clientHeight } = document.documentElement
      return { windowAdds: scrollHeight - clientHeight, pageAdds: main.scrollHeight - main.clientHeight }
    })
    expect({ windowAdds, pageAdds }).toEqual({ windowAdds: 0, pageAdds: 0 })
  })

  it('are told whole where a cell of a list is too narrow for its words', async () => {
    const { page } = opened
    const flags = page.locator('tr[data-index="8"] td').nth(1)
    await flags.evaluate((cell) => {
      cell.style.maxWidth = '3rem'
      cell.closest('table')!.style.width = '30rem'
    })
    await flags.hover()
    expect(await flags.getAttribute('title')).toBe(await flags.textContent())
  })

  it('reported no error on the way', () => expect(opened.problems).toEqual([]))
})
