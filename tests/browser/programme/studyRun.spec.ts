import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { type OwnEngine, openOwnEngine } from '../harness/ownEngine.ts'
import { tabTo } from '../harness/tabTo.ts'

/** A study planned and allocated in a real browser, by keys alone. */
describe.skipIf(chromiumPath === null)('a study of 1728 blocks by keyboard', () => {
  let own: OwnEngine
  let opened: OpenedPage

  beforeAll(async () => {
    own = await openOwnEngine()
    await own.engine.handlers['preferences.set']({ cautionsRead: true, operator: 'bench 1' })
    opened = await openPage({ host: 'loopback', engine: own.engine })
    await opened.page.getByRole('navigation').waitFor()
  })
  afterAll(async () => {
    await opened?.close()
    await own?.close()
  })

  const press = (key: string) => opened.page.keyboard.press(key)
  const type = (text: string) => opened.page.keyboard.type(text)
  const heading = (name: string) => opened.page.getByRole('heading', { name, level: 1 }).waitFor()
  const total = (text: string) => opened.page.locator('.study-total', { hasText: text }).waitFor()

  async function enterEach(names: readonly string[]): Promise<void> {
    for (const name of names) {
      await type(name)
      await press('Enter')
    }
  }

  it('is typed level by level, and says at once what it needs', async () => {
    await press('d')
    await heading('Studies')
    await tabTo(opened.page, 'main a.button-primary')
    await press('Enter')
    await heading('Plan a study')
    await type('Which adhesive lasts?')
    await press('Tab')
    await press('Tab')
    await enterEach(['C1', 'E4', 'F6', 'R2', 'U3', 'V5', 'Z9'])
    await press('Backspace')
    await tabTo(opened.page, '.list-field input:not([type="hidden"])')
    await enterEach(['loft', 'bilge'])
    const ages = opened.page.getByLabel('Ages, in months')
    await ages.focus()
    await enterEach(['0', '2 years'])
    expect(await ages.inputValue()).toBe('0, 2 years, ')
    await tabTo(opened.page, '[aria-label="Years to the last age"]')
    await press('Control+A')
    await type('8')
    await press('Enter')
    await total('1728 blocks')
    expect(await ages.inputValue()).toBe('0, 6, 12, 18, 24, 30, 36, 48, 60, 72, 84, 96')
  })

  it('leaves out a cell to which arrow keys lead, and takes it back in', async () => {
    await tabTo(opened.page, '.group-row')
    for (const key of ['ArrowDown', 'ArrowRight', 'ArrowRight', 'Space']) await press(key)
    await total('1716 blocks')
    await press('Space')
    await total('1728 blocks')
  })

  it('is kept and allocated, and every cell says what is to be glued', async () => {
    await tabTo(opened.page, 'main button[type="submit"]')
    await press('Enter')
    await heading('Which adhesive lasts?')
    await tabTo(opened.page, '.record-buttons button')
    await press('Enter')
    await opened.page.getByRole('dialog').waitFor()
    await press('Enter')
    await opened.page.getByText('1728 blocks: 1728 to glue').waitFor()
    expect(await opened.page.getByRole('cell', { name: '12 to glue' }).count()).toBe(144)
    const { runnings, cells } = await own.engine.handlers['studies.get']({ studyId: 1 })
    expect(cells).toHaveLength(144)
    // 1 makes no label: its check would be no digit
    expect(runnings?.first).toBe(2)
    expect(opened.problems).toEqual([])
  })

  it('is printed with all of its ages on the paper, which lies on its side', async () => {
    const { page } = opened
    await page.emulateMedia({ media: 'print' })
    // Letter and A4 within their margins, were they upright
    await page.setViewportSize({ width: 700, height: 1000 })
    const printed = await page.locator('.study-cells-scroll').evaluate((place) => ({
      beyond: place.scrollWidth - place.clientWidth,
      page: getComputedStyle(place.closest('.study-page')!).getPropertyValue('page'),
    }))
    expect(printed).toEqual({ beyond: 0, page: 'wide' })
  })
})
