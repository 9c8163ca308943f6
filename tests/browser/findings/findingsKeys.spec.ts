import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { at, settle } from '../screens/screenSteps.ts'

const focused = (page: Page) =>
  page.evaluate(() => ({
    words: document.activeElement?.textContent ?? '',
    href: document.activeElement?.getAttribute('href') ?? null,
  }))

async function tabTo(page: Page, wanted: (one: Awaited<ReturnType<typeof focused>>) => boolean) {
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press('Tab')
    const one = await focused(page)
    if (wanted(one)) return one
  }
  throw new Error('Tab does not reach it')
}

describe.skipIf(chromiumPath === null)('by keys alone', () => {
  let opened: OpenedPage
  beforeAll(async () => {
    opened = await openPage({ host: 'loopback', engine: createScriptedHost() })
    await at('#/findings')(opened.page)
    await opened.page.getByLabel('What changed with age?').check()
    await settle(opened.page)
  })
  afterAll(async () => opened?.close())

  it('the figure of ageing reads its means, its blocks and the ages to come', async () => {
    const { page } = opened
    const figure = page.getByRole('group', { name: /^Strength against age/ }).first()
    await figure.focus()
    const said = async (key: string) => {
      await page.keyboard.press(key)
      return figure.locator('[aria-live]').textContent()
    }
    expect(await said('Home')).toMatch(/^0 months: mean .* of 8 blocks$/)
    expect(await said('End')).toMatch(/^30 years: still to come/)
    expect(await figure.getByRole('img').locator('> desc').textContent()).toMatch(/The line averaged over the models/)
  })

  it('a row of the table leads to its blocks, and these to specimen and curve', async () => {
    const { page } = opened
    const rows = () => page.locator('.findings-blocks li').count()
    expect(await rows()).toBe(0)
    await page.getByRole('table').first().getByRole('button').first().focus()
    await page.keyboard.press('Enter')
    expect((await focused(page)).words).toMatch(/^casein C1.*0 months old: 8 blocks$/)
    await expect.poll(rows).toBe(8)
    const specimen = await tabTo(page, ({ href }) => href !== null)
    expect(specimen.href).toMatch(/^#\/specimens\/\d+$/)
    const curve = await tabTo(page, ({ words }) => words === 'curve')
    expect(curve.href).toMatch(/^#\/breaks\/\d+$/)
  })

  it('what is to be done next leads to the blocks, the specimens, the studies and what is due', async () => {
    const { page } = opened
    await page.getByLabel('What should I do next?').check()
    await page.getByRole('heading', { name: 'With what is on the shelf' }).waitFor()
    await page.getByRole('heading', { name: 'Now' }).waitFor()
    const addresses = new Set<string>()
    await page.getByLabel('Difference that matters').focus()
    for (let i = 0; i < 80 && !addresses.has('blocks'); i++) {
      await page.keyboard.press('Tab')
      const { href, words } = await focused(page)
      if (href !== null) addresses.add(href.replace(/\d+$/, ''))
      else if (/^(casein|epoxy|one-part|resorcinol)/.test(words)) addresses.add('blocks')
    }
    expect([...addresses]).toEqual(expect.arrayContaining(['#/studies/', '#/due/', 'blocks']))
    await page.keyboard.press('Enter')
    expect((await focused(page)).words).toMatch(/blocks?$/)
  })

  it('reported no error on the way', () => expect(opened.problems).toEqual([]))
})
