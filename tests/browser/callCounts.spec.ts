import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { benchEngine, virtualChoice } from '#tests/fakes/benchEngine.ts'
import { type CountedEngine, countedEngine } from '#tests/fakes/countedEngine.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { keepCurve } from '../engine/storedCurves.ts'
import { chromiumPath, type OpenBrowser, openBrowser } from './harness/chromium.ts'
import { type OpenedPage, openPage } from './harness/openPage.ts'

const faces = { woodFailurePercent: 65, failurePattern: null, note: 'a thin spot', by: 'bench' } as const
const signature = { by: 'bench', reason: 'seen on the face' }

/** What open pages ask when something is written: one engine, and a host with an account of its own for each page. */
describe.skipIf(chromiumPath === null)('what an open page asks again', () => {
  let home: Awaited<ReturnType<typeof temporaryArchive>>
  let made: Awaited<ReturnType<typeof benchEngine>>
  let browser: OpenBrowser
  const opened: OpenedPage[] = []
  const pages = {} as Record<'list' | 'record' | 'comparison', CountedEngine>

  beforeAll(async () => {
    home = await temporaryArchive()
    const specimenIds = await addBlocks(home.archive, ['A-1', 'A-2', 'A-3', 'A-4'])
    const plain = { restMs: 500, climbMs: 2000, afterMs: 300, peakCounts: 400_000 }
    for (const specimenId of specimenIds.slice(0, 3)) await keepCurve(home.archive, plain, { specimenId })
    made = await benchEngine(home.archive, { breaks: 1 })
    await made.handlers['preferences.set']({ cautionsRead: true, source: virtualChoice })
    browser = await openBrowser()
    const places = { list: '#/breaks', record: '#/breaks/1', comparison: '#/compare/1,2' } as const
    for (const name of ['list', 'record', 'comparison'] as const) {
      pages[name] = countedEngine(made.engine)
      const one = await openPage({ host: 'loopback', engine: pages[name], browser })
      opened.push(one)
      await one.page.evaluate((hash) => {
        location.hash = hash
      }, places[name])
    }
    await opened[0]!.page.getByRole('row').nth(3).waitFor()
    await opened[1]!.page.locator('canvas').first().waitFor()
    await opened[2]!.page.locator('.compare-table tr').nth(2).waitFor()
    await quiet()
  })
  afterAll(async () => {
    for (const one of opened) await one.close()
    await browser.close()
    await made.engine.close()
    await home.remove()
  })

  let theme: 'light' | 'dark' = 'light'

  /** Until every page shows another theme: it hears in order, so it has heard everything before. */
  async function heard(): Promise<void> {
    theme = theme === 'light' ? 'dark' : 'light'
    await made.handlers['preferences.set']({ theme })
    for (const { page } of opened)
      await page.waitForFunction((wanted) => document.documentElement.dataset.theme === wanted, theme)
  }

  /** Until every page has nothing more to ask; then the accounts begin anew. */
  async function quiet(): Promise<Record<keyof typeof pages, Record<string, number>>> {
    const all = Object.values(pages)
    const asked = () => all.reduce((sum, one) => sum + one.total(), 0)
    for (let before = -1; before !== asked() || all.some((one) => one.waiting() > 0); ) {
      before = asked()
      await heard()
    }
    return { list: pages.list.counts(), record: pages.record.counts(), comparison: pages.comparison.counts() }
  }

  test('after a note on the open break: the list and the record once, for the comparison shows no notes', async () => {
    await made.handlers['breaks.assess']({ breakId: 1, ...faces })
    expect(await quiet()).toEqual({
      list: { 'breaks.list': 1 },
      // Pictures are told of as a part of their break.
      record: { 'breaks.get': 1, 'pictures.list': 1 },
      comparison: {},
    })
  })

  test('after a note on another break: the list alone', async () => {
    await made.handlers['breaks.assess']({ breakId: 3, ...faces })
    expect(await quiet()).toEqual({ list: { 'breaks.list': 1 }, record: {}, comparison: {} })
  })

  test('after a corrected peak: the list, the record, and of the comparison what the break counts as', async () => {
    await made.handlers['breaks.pickPeak']({ breakId: 1, timeS: 1.2, ...signature })
    expect(await quiet()).toEqual({
      list: { 'breaks.list': 1 },
      record: { 'breaks.get': 1, 'pictures.list': 1 },
      // The comparison, the record that its table shows, and whether the breaks are still of one group; no curve.
      comparison: { 'comparison.make': 1, 'breaks.get': 1, 'breaks.group': 1 },
    })
  })

  test('during a capture: the list when it begins and when its break is stored, and whether the group has one more', async () => {
    await made.handlers['bench.connect']({ source: virtualChoice })
    await made.until((state) => state.captureBreakId !== null)
    const begun = await quiet()
    await made.until((state) => state.lastBreak !== null)
    expect([begun, await quiet()]).toEqual([
      { list: { 'breaks.list': 1 }, record: {}, comparison: {} },
      { list: { 'breaks.list': 1 }, record: {}, comparison: { 'breaks.group': 1 } },
    ])
  })

  test('without a complaint of any page', () => {
    expect(opened.flatMap(({ problems }) => problems)).toEqual([])
  })
})
