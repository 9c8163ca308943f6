import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openArchive } from '#archive/openArchive.ts'
import { storeGroup } from '#tests/bench/comparedBreaks.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { type OwnEngine, openOwnEngine, type RealEngine } from '../harness/ownEngine.ts'
import { savedFile } from '../harness/savedFile.ts'
import { tabTo } from '../harness/tabTo.ts'

const breaks = 7
/** Twelve seconds of the virtual bench. */
const samplesEach = 60_000

/** Breaks of the virtual bench in a real archive, compared in a real browser by keys alone: no pointer is ever used. */
describe.skipIf(chromiumPath === null)('comparing breaks by keyboard', () => {
  let own: OwnEngine
  let engine: RealEngine
  let opened: OpenedPage

  beforeAll(async () => {
    own = await openOwnEngine(async (path) => {
      const archive = await openArchive({ path, program: 'test' })
      await storeGroup(archive, breaks, samplesEach)
      await archive.close()
    })
    engine = own.engine
    await engine.handlers['preferences.set']({ cautionsRead: true })
    opened = await openPage({ host: 'loopback', engine })
    await opened.page.getByRole('navigation').waitFor()
  })
  afterAll(async () => {
    await opened?.close()
    await own?.close()
  })

  const press = (key: string) => opened.page.keyboard.press(key)
  const heading = (name: string | RegExp) => opened.page.getByRole('heading', { name, level: 1 }).waitFor()
  const bar = () => opened.page.getByRole('region', { name: 'Selected breaks' })

  /** Pixels of the plot that have the colour of the curve that stands out. */
  const pixelsOfAccent = () =>
    opened.page.evaluate(() => {
      const canvas = document.querySelector<HTMLCanvasElement>('.overlay-figure canvas')
      const accent = getComputedStyle(document.documentElement).getPropertyValue('--accent').trim()
      const wanted = [1, 3, 5].map((at) => Number.parseInt(accent.slice(at, at + 2), 16))
      const copy = new OffscreenCanvas(canvas!.width, canvas!.height).getContext('2d', { willReadFrequently: true })!
      copy.drawImage(canvas!, 0, 0)
      const { data } = copy.getImageData(0, 0, canvas!.width, canvas!.height)
      let count = 0
      for (let i = 0; i < data.length; i += 4)
        if (wanted.every((value, channel) => data[i + channel] === value)) count++
      return count
    })

  it('selects breaks in the list with Space and with Shift and the arrows', async () => {
    await press('k')
    await heading('Breaks')
    await opened.page.locator('tr[data-index="6"] strong').waitFor()
    await tabTo(opened.page, 'tr[data-index]')
    await press('Space')
    await bar().getByText('1 selected').waitFor()
    for (let i = 0; i < 5; i++) await press('Shift+ArrowDown')
    await bar().getByText('6 selected').waitFor()
    await press('Space')
    await bar().getByText('5 selected').waitFor()
  })

  it('selects all that fit with Ctrl+A', async () => {
    await press('Control+a')
    await bar().getByText(`${breaks} selected`).waitFor()
    expect(await opened.page.locator('tr[data-picked]').count()).toBe(breaks)
  })

  it('compares them: a curve and a row for each', async () => {
    await tabTo(opened.page, '.selection-actions button')
    await press('Enter')
    await heading(`${breaks} breaks compared`)
    await opened.page.locator('.compare-table').waitFor()
    await opened.page.locator('.compare-tasks').waitFor({ state: 'detached' })
    expect(await opened.page.locator('.compare-table tr[data-break]').count()).toBe(breaks)
    await opened.page.getByText(/^all of epoxy E4/).waitFor()
    expect(await pixelsOfAccent()).toBe(0)
  })

  it('goes from curve to curve, each standing out in plot and table, and reads it', async () => {
    await tabTo(opened.page, '.overlay-figure .plot')
    await press('ArrowDown')
    await press('ArrowDown')
    await opened.page.locator('tr[data-index="1"][data-chosen]').waitFor()
    await expect.poll(pixelsOfAccent).toBeGreaterThan(300)
    await press('ArrowRight')
    await opened.page.getByText(/ s · E4-LL-\d .* N · median .* N$/).waitFor()
    await press('+')
    await opened.page.getByText(/^[\d.−]+ to [\d.]+ s$/).waitFor()
  })

  it('saves them as a figure that says what it shows and which breaks it rests on', async () => {
    const { name, content } = await savedFile(opened.page, 'Save as SVG')
    expect(name).toMatch(/^7-load-curves-over-each-other-all-of-epoxy-e4.*\.svg$/)
    const text = content.toString('utf8')
    expect(text).toContain('>time from the start of loading, s<')
    expect(text).toMatch(/Breaks (\d, ){6}\d\./)
    const chosen = await opened.page.locator('tr[data-chosen] th a').textContent()
    expect(text).toContain(`>${chosen}<`)
  })

  it('lays them at their peak, in percent of it', async () => {
    await opened.page.getByLabel('Peak', { exact: true }).focus()
    await press('Space')
    await opened.page.getByLabel('% of own peak').focus()
    await press('Space')
    await opened.page.locator('.compare-tasks').waitFor({ state: 'detached' })
    await opened.page.getByLabel(/Curves over each other/).focus()
    await press('End')
    await opened.page
      .getByText(/median [\d.]+ %$/)
      .or(opened.page.getByText(/ s · E4-LL-\d/))
      .first()
      .waitFor()
  })

  it('takes a curve out with Delete and puts it back', async () => {
    await tabTo(opened.page, '.compare-table tr[data-break]')
    await press('Delete')
    await heading(`${breaks - 1} breaks compared`)
    await opened.page.getByText('Taken out: 1.').waitFor()
    expect(await opened.page.evaluate(() => document.activeElement?.matches('tr[data-break]'))).toBe(true)
    await opened.page.getByRole('button', { name: 'Put back' }).focus()
    await press('Enter')
    await heading(`${breaks} breaks compared`)
    expect(await opened.page.evaluate(() => document.activeElement?.matches('tr[data-break]'))).toBe(true)
  })

  it('opens the break of a row with Enter', async () => {
    await opened.page.locator('.compare-tasks').waitFor({ state: 'detached' })
    await tabTo(opened.page, '.compare-table tr[data-break]')
    await press('Home')
    await press('Enter')
    await heading(/E4-LL-\d/)
    expect(opened.problems).toEqual([])
  })
})
