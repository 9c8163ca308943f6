import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from './harness/chromium.ts'
import { type OpenedPage, openPage } from './harness/openPage.ts'

describe.skipIf(chromiumPath === null)('a list of ten thousand specimens', () => {
  let host: ScriptedHost
  let opened: OpenedPage
  beforeAll(async () => {
    host = createScriptedHost({ specimens: 10_000 })
    opened = await openPage({ host: 'loopback', engine: host })
    await opened.page.waitForSelector('.bench')
    await opened.page.keyboard.press('s')
    await opened.page.locator('tr[data-index="0"] strong').waitFor()
  })
  afterAll(async () => opened?.close())

  const countWords = () =>
    `${host.specimens.filter(({ fields }) => fields.adhesive.includes('epoxy') && fields.exposure === 'bilge').length} specimens`
  const rowsBuilt = () => opened.page.locator('tr[data-index]').count()

  it('builds only the rows in sight', async () => expect(await rowsBuilt()).toBeLessThan(60))

  it('goes to the last row with End and fetches only its page', async () => {
    await opened.page.locator('tr[data-index="0"]').focus()
    await opened.page.keyboard.press('End')
    await opened.page.locator('tr[data-index="9999"] strong').waitFor()
    expect(await opened.page.evaluate(() => document.activeElement?.getAttribute('aria-rowindex'))).toBe('10001')
    expect(await rowsBuilt()).toBeLessThan(60)
    const asked = host.calls.filter(({ name }) => name === 'specimens.list')
    expect(asked.length).toBeLessThanOrEqual(6)
  })

  it('opens the row with Enter and comes back to the same search', async () => {
    await opened.page.keyboard.press('/')
    await opened.page.keyboard.type('epoxy bilge')
    await opened.page.getByText(countWords()).waitFor()
    await opened.page.locator('tr[data-index="0"]').focus()
    await opened.page.keyboard.press('ArrowDown')
    await opened.page.keyboard.press('Enter')
    await opened.page.getByRole('heading', { level: 1, name: /^E4-LL-/ }).waitFor()
    await opened.page.goBack()
    await opened.page.getByText(countWords()).waitFor()
    expect(await opened.page.getByRole('searchbox').inputValue()).toBe('epoxy bilge')
  })

  it.each([
    { keys: [], row: '1' },
    { keys: ['Tab'], row: null },
  ])('gives the focus to the row that was opened, unless $keys led elsewhere before it came', async ({ keys, row }) => {
    const { page } = opened
    const focused = () => page.evaluate(() => [document.activeElement?.tagName, document.activeElement?.textContent])
    await page.locator('tr[data-index="1"] strong').waitFor()
    await page.locator('tr[data-index="1"]').focus()
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { level: 1, name: /^E4-LL-/ }).waitFor()
    const list = host.handlers['specimens.list']
    const held = Promise.withResolvers<void>()
    host.handlers['specimens.list'] = async (input) => held.promise.then(() => list(input))
    await page.goBack()
    await page.getByRole('heading', { level: 1, name: 'Specimens' }).waitFor()
    for (const key of keys) await page.keyboard.press(key)
    const before = await focused()
    held.resolve()
    host.handlers['specimens.list'] = list
    await page.locator('tr[data-index="1"] strong').waitFor()
    if (row === null) expect(await focused()).toEqual(before)
    else await page.locator(`tr[data-index="${row}"]:focus`).waitFor()
  })

  it.each([
    { keys: ['Enter'], opens: true },
    { keys: ['Enter', 'ArrowDown'], opens: false },
  ])('with $keys on a row that has not come yet, opens it when it comes: $opens', async ({ keys, opens }) => {
    const { page } = opened
    const list = host.handlers['specimens.list']
    const held = Promise.withResolvers<void>()
    host.handlers['specimens.list'] = async (input) => held.promise.then(() => list(input))
    await page.getByRole('searchbox').fill('epoxy')
    await page.locator('tr[data-index="0"] .long-table-coming').first().waitFor()
    await page.getByRole('searchbox').focus()
    for (const key of ['ArrowDown', ...keys]) await page.keyboard.press(key)
    held.resolve()
    host.handlers['specimens.list'] = list
    if (opens) {
      await page.getByRole('heading', { level: 1, name: /^E4-LL-/ }).waitFor()
      await page.goBack()
    }
    await page.locator('tr[data-index="1"] strong').waitFor()
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Specimens')
    await page.getByRole('searchbox').fill('epoxy bilge')
    await page.getByText(countWords()).waitFor()
  })

  it('sorts by a column and says so', async () => {
    await opened.page.getByRole('button', { name: 'Adhesive' }).click()
    await opened.page.locator('th[aria-sort="ascending"]', { hasText: 'Adhesive' }).waitFor()
    await opened.page.getByRole('button', { name: 'Adhesive' }).click()
    await opened.page.locator('th[aria-sort="descending"]', { hasText: 'Adhesive' }).waitFor()
  })

  it('says when nothing fits', async () => {
    await opened.page.getByRole('searchbox').fill('no such thing')
    await opened.page.getByText('No specimen fits the search and filter.').waitFor()
    expect(opened.problems).toEqual([])
  })
})
