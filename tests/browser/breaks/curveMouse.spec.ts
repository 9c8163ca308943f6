import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { reviewScreens } from '../screens/reviewScreens.ts'
import { settle } from '../screens/screenSteps.ts'

/** What the mouse does on a recorded curve, as its own caption tells the stretch in sight. */
describe.skipIf(chromiumPath === null)('a recorded curve under the mouse', () => {
  let opened: OpenedPage
  let box: { x: number; y: number; width: number; height: number }

  beforeAll(async () => {
    const screen = reviewScreens.find(({ name }) => name === 'curve')!
    const host = screen.host()
    opened = await openPage({ host: 'loopback', engine: host })
    await screen.show(opened.page, host)
    await opened.page.getByRole('switch', { name: /^Slope/ }).click()
    box = (await opened.page.locator('.recorded-curve .u-over').first().boundingBox())!
  })
  afterAll(async () => opened?.close())

  /** The stretch in sight, s; null: the whole curve. */
  async function inSight(): Promise<[number, number] | null> {
    await settle(opened.page)
    const words = (await opened.page.locator('.curve-tools').textContent()) ?? ''
    const found = /([\d.]+) to ([\d.]+) s/.exec(words)
    return found === null ? null : [Number(found[1]), Number(found[2])]
  }
  const lengthOf = ([fromS, toS]: [number, number]) => toS - fromS
  async function drag(fromShare: number, toShare: number, over = box) {
    const { mouse } = opened.page
    await mouse.move(over.x + fromShare * over.width, over.y + over.height / 2)
    await mouse.down()
    await mouse.move(over.x + ((fromShare + toShare) / 2) * over.width, over.y + over.height / 2)
    await mouse.move(over.x + toShare * over.width, over.y + over.height / 2)
    await mouse.up()
  }

  it('zooms to what is drawn over', async () => {
    await drag(0.4, 0.6)
    const [fromS, toS] = (await inSight())!
    // 872 samples at 80 Hz: 10.8875 s from the first to the last
    expect(fromS).toBeCloseTo(0.4 * 10.8875, 1)
    expect(toS).toBeCloseTo(0.6 * 10.8875, 1)
  })

  it('moves along with Shift held down', async () => {
    const before = (await inSight())!
    await opened.page.keyboard.down('Shift')
    await drag(0.75, 0.25)
    await opened.page.keyboard.up('Shift')
    const after = (await inSight())!
    expect(lengthOf(after)).toBeCloseTo(lengthOf(before), 2)
    expect(after[0] - before[0]).toBeCloseTo(0.5 * lengthOf(before), 1)
  })

  it('zooms about the pointer with the wheel, and stops at the whole curve', async () => {
    const before = (await inSight())!
    await opened.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await opened.page.mouse.wheel(0, -300)
    const closer = (await inSight())!
    expect(lengthOf(closer)).toBeLessThan(0.8 * lengthOf(before))
    expect((closer[0] + closer[1]) / 2).toBeCloseTo((before[0] + before[1]) / 2, 1)
    for (let i = 0; i < 12 && (await inSight()) !== null; i++) await opened.page.mouse.wheel(0, 500)
    expect(await inSight()).toBeNull()
  })

  it('is moved by the slope below it, and shows all on a double click', async () => {
    const below = (await opened.page.locator('.slope-panel .u-over').boundingBox())!
    await drag(0.2, 0.3, below)
    const [fromS] = (await inSight())!
    expect(fromS).toBeCloseTo(0.2 * 10.8875, 1)
    await opened.page.mouse.dblclick(box.x + 50, box.y + 50)
    expect(await inSight()).toBeNull()
  })

  it('keeps a sample that is clicked until it is clicked again, and gives it for the peak with the curve in sight', async () => {
    const { page } = opened
    const plot = page.locator('.recorded-curve .u-over').first()
    const click = async () => {
      const { x, y, width, height } = (await plot.boundingBox())!
      await page.mouse.click(x + 0.5 * width, y + 0.5 * height)
      await page.mouse.move(5, 5)
    }
    await click()
    const words = await page.getByText(/^Kept: [\d.]+ s/).textContent()
    await page.getByRole('button', { name: /^Take this sample as the peak/ }).click()
    const time = await page.getByLabel('Time of the sample').inputValue()
    expect(Number(time)).toBeCloseTo(Number(/[\d.]+/.exec(words!)![0]), 3)
    const dialog = (await page.getByRole('dialog').boundingBox())!
    const curve = (await plot.boundingBox())!
    expect(dialog.x).toBeGreaterThanOrEqual(curve.x + curve.width)
    expect(curve.y).toBeGreaterThan(0)
    expect(curve.y + curve.height).toBeLessThan(800)
    await page.locator('.before-after strong').waitFor()
    await page.getByRole('button', { name: 'Cancel' }).click()
    await page.getByText(/^Kept: /).waitFor()
    await click()
    await page.getByText(/^Point or/).waitFor()
  })

  it('keeps the whole curve in sight above the dialog at 200 % zoom', async () => {
    const { page } = opened
    await page.setViewportSize({ width: 640, height: 400 })
    await page.getByRole('application').focus()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('p')
    await page.getByRole('dialog').waitFor()
    await settle(page)
    const dialog = (await page.getByRole('dialog').boundingBox())!
    const curve = (await page.locator('.recorded-curve .u-over').first().boundingBox())!
    const head = (await page.locator('.frame-head').boundingBox())!
    expect(curve.y).toBeGreaterThan(head.y + head.height)
    expect(curve.y + curve.height).toBeLessThan(dialog.y)
    await page.getByRole('button', { name: 'Cancel' }).click()
    await page.setViewportSize({ width: 1280, height: 800 })
    await settle(page)
    box = (await page.locator('.recorded-curve .u-over').first().boundingBox())!
  })

  it('reads force and slope under the pointer', async () => {
    await opened.page.mouse.move(box.x + 0.5 * box.width, box.y + 40)
    await opened.page.getByText(/ s · [\d\u2009.]+ N · slope [\d\u2009.]+ N\/s/).waitFor()
    expect(opened.problems).toEqual([])
  })
})
