import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { polynomialAt } from '#domain/calibration/fit/polynomial.ts'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { scriptedChanges } from '#tests/fakes/scripted/scriptedReevaluation.ts'
import { madeCalibration } from '../archive/storedCalibration.ts'
import { chromiumPath } from './harness/chromium.ts'
import { hosts, type OpenedPage, openPage, takePicture } from './harness/openPage.ts'
import { type OwnEngine, openOwnEngine, type RealEngine } from './harness/ownEngine.ts'
import { tabTo } from './harness/tabTo.ts'

/** Below every peak of the demo study, so that a rated load of this flags each. */
const lowRatedLoadN = 200

/** Breaks of the demo study evaluated again in a real browser, by keys alone: no pointer is ever used. */
describe.skipIf(chromiumPath === null)('evaluating breaks again by keyboard on the demo study', () => {
  let own: OwnEngine
  let engine: RealEngine
  let opened: OpenedPage

  beforeAll(async () => {
    own = await openOwnEngine()
    engine = own.engine
    await engine.handlers['demo.fill']({})
    const { header } = await engine.handlers['breaks.get']({ breakId: 1 })
    if (header.scale.kind !== 'calibration') throw new Error('the demo study is not calibrated')
    // One percent steeper than the calibration that the study was captured with, at every reading.
    const { coefficients } = header.scale
    const [offset, slope] = coefficients
    const rows = [0, 2500, 5000, 7500, 10_000].map((forceN) => {
      const reading = (forceN - offset!) / slope!
      return { run: 1, direction: 'up' as const, forceN: 1.01 * polynomialAt(coefficients, reading), reading }
    })
    const degree = (coefficients.length - 1) as 1 | 2 | 3
    const steeper = { rows, readings: [], assessment: calibrationOf(rows, { degree }) }
    await engine.archive.addCalibration(madeCalibration({ name: 'Steeper by one percent', ...steeper }), null)
    await engine.handlers['preferences.set']({ cautionsRead: true, operator: 'bench 1' })
    opened = await openPage({ host: 'loopback', engine })
    await opened.page.getByRole('navigation').waitFor()
  })
  afterAll(async () => {
    await opened?.close()
    await own?.close()
  })

  const press = (key: string) => opened.page.keyboard.press(key)
  const type = (text: string) => opened.page.keyboard.type(text)
  const heading = (name: string | RegExp) => opened.page.getByRole('heading', { name, level: 1 }).waitFor()
  const inForce = async (breakId: number) => (await engine.handlers['breaks.get']({ breakId })).summary

  /** Tabs until the control whose words or label begin with that name has the focus. */
  async function tabToName(name: string): Promise<void> {
    for (let i = 0; i < 80; i++) {
      await press('Tab')
      const there = await opened.page.evaluate((wanted) => {
        const element = document.activeElement
        const labels = element !== null && 'labels' in element ? [...(element.labels as NodeListOf<Element>)] : []
        return [element, ...labels].some((one) => one?.textContent?.trim().startsWith(wanted))
      }, name)
      if (there) return
    }
    throw new Error(`Tab does not reach "${name}"`)
  }

  let breakIds: number[] = []
  let before: Awaited<ReturnType<typeof inForce>>[] = []

  it('selects breaks in the list', async () => {
    await press('k')
    await heading('Breaks')
    await press('/')
    await type('casein')
    const rows = opened.page.getByRole('row', { name: /^break \d+, \d+/ })
    await rows.filter({ hasText: 'casein' }).first().waitFor()
    await expect.poll(() => rows.filter({ hasNotText: 'casein' }).count()).toBe(0)
    await tabTo(opened.page, 'tr[data-index]')
    await press('Space')
    await press('Shift+ArrowDown')
    await press('Shift+ArrowDown')
    await opened.page.getByText('3 selected').waitFor()
    await tabToName('Evaluate again')
    await press('Enter')
    await heading('Evaluate again')
    await opened.page.getByRole('radio', { name: /3 breaks selected in the list/, checked: true }).waitFor()
  })

  it('chooses a calibration and a threshold, and runs', async () => {
    await opened.page.getByRole('option', { name: /^Steeper by one percent/ }).waitFor({ state: 'attached' })
    await tabToName('Calibration to use')
    await press('ArrowDown')
    await tabToName('Rated load')
    await type(String(lowRatedLoadN))
    await opened.page.getByText('under “Steeper by one percent”, rated load 200').waitFor()
    await tabToName('Evaluate again')
    await press('Enter')
    await heading(/^3 breaks evaluated again/)
    await opened.page.getByText('waiting for your decision').waitFor()
    breakIds = [...(await engine.handlers['reevaluations.changes'](changesQuery)).rows.map(({ breakId }) => breakId)]
    before = await Promise.all(breakIds.map(inForce))
  })

  const changesQuery = {
    reevaluationId: 1,
    only: 'all',
    sort: 'number',
    descending: false,
    offset: 0,
    limit: 200,
  } as const

  it('lays the new results beside those in force, which stay', async () => {
    // One percent more of everything, by hand.
    const { rows, figures } = await engine.handlers['reevaluations.changes'](changesQuery)
    expect(rows).toHaveLength(3)
    for (const row of rows) expect(row.differencePercent).toBeCloseTo(1, 6)
    expect(rows.map((row) => row.before.peakN)).toEqual(before.map(({ peakN }) => peakN))
    expect(figures).toMatchObject({ results: 3, peaks: 3, flags: 3 })
    for (const { flags } of before) expect(flags).not.toContain('over-capacity')
    await opened.page.getByText('+1.00').nth(2).waitFor()
    await opened.page
      .getByText(/\+.*above rated load/)
      .nth(2)
      .waitFor()
    await takePicture(opened.page, 'real-reevaluation')
  })

  it('opens the break of a row, which shows the new result as a proposal', async () => {
    await tabTo(opened.page, 'tr[data-index]')
    await press('Enter')
    await heading(/broke$/)
    await opened.page.getByRole('heading', { name: 'All results of this break' }).waitFor()
    await tabToName('re-evaluation 1')
    await press('Enter')
    await heading(/^3 breaks evaluated again/)
  })

  it('adopts with a reason, and with none it does not', async () => {
    await tabToName('Adopt these results')
    await press('Enter')
    await heading('Adopt the results of 3 breaks')
    await tabToName('Adopt')
    await press('Enter')
    await opened.page.getByText(/^Give a reason/).waitFor()
    expect((await engine.handlers['reevaluations.get']({ reevaluationId: 1 })).decisions).toEqual([])
    await tabToName('Reason')
    await type('the better calibration')
    await tabToName('Adopt')
    await press('Enter')
    await opened.page.locator('dialog').waitFor({ state: 'detached' })
    await opened.page.getByText('adopted', { exact: true }).waitFor()
    for (const [index, breakId] of breakIds.entries()) {
      const now = await inForce(breakId)
      expect(now.peakN! / before[index]!.peakN!).toBeCloseTo(1.01, 8)
      expect(now.flags).toContain('over-capacity')
    }
  })

  it('shows the adopted results in the list of breaks, and the decision in that of re-evaluations', async () => {
    await press('k')
    await heading('Breaks')
    await opened.page
      .getByRole('row', { name: `break ${breakIds[0]},` })
      .getByText('above rated load')
      .waitFor()
    await tabToName('Re-evaluations')
    await press('Enter')
    await heading('Re-evaluations')
    await opened.page.getByRole('row', { name: /3 breaks Steeper by one percent .* adopted/ }).waitFor()
    await tabToName(new Date().toLocaleString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' }))
    await press('Enter')
    await heading(/^3 breaks evaluated again/)
  })

  it('takes them out of force again, and everything is as it was', async () => {
    await tabToName('Take out of force again')
    await press('Enter')
    await heading('Take out of force again')
    await type('wrong rated load')
    await tabToName('Take out of force')
    await press('Enter')
    await opened.page.locator('dialog').waitFor({ state: 'detached' })
    await opened.page.getByText('taken out again', { exact: true }).waitFor()
    expect(await Promise.all(breakIds.map(inForce))).toEqual(before)
    const { decisions } = await engine.handlers['reevaluations.get']({ reevaluationId: 1 })
    expect(decisions.map(({ kind, by, reason }) => [kind, by, reason])).toEqual([
      ['adopted', 'bench 1', 'the better calibration'],
      ['dropped', 'bench 1', 'wrong rated load'],
    ])
    expect((await engine.handlers['archive.verify']({})).faults).toEqual([])
  })

  it('leaves the results of a second one, begun from a single break, by a recorded no', async () => {
    await press('k')
    await heading('Breaks')
    await tabTo(opened.page, 'tr[data-index]')
    await press('Enter')
    await heading(/broke$/)
    await tabToName('Evaluate again')
    await press('Enter')
    await heading('Evaluate again')
    await opened.page.getByRole('radio', { name: /^Only \d+/, checked: true }).waitFor()
    await tabToName('Name or initials')
    await press('Enter')
    await heading(/^1 break evaluated again/)
    await opened.page.getByText('Every result is as it was.').waitFor()
    await tabToName('Do not adopt')
    await press('Enter')
    await type('nothing to gain')
    await tabToName('Do not adopt')
    await press('Enter')
    await opened.page.locator('dialog').waitFor({ state: 'detached' })
    await opened.page.getByText('not adopted', { exact: true }).waitFor()
  })

  it('reported no error anywhere on the way', () => expect(opened.problems).toEqual([]))
})

describe.skipIf(chromiumPath === null).each(hosts)('a re-evaluation that runs, behind the %s host', (hostName) => {
  let host: ScriptedHost
  let opened: OpenedPage
  beforeAll(async () => {
    host = createScriptedHost()
    host.reevaluation.changes.push(...scriptedChanges(30))
    opened = await openPage({ host: hostName, engine: host })
    await opened.page.getByRole('navigation').waitFor()
  })
  afterAll(async () => opened?.close())

  it('is shown on the bench while it runs, and leads back to its page', async () => {
    const { page } = opened
    await host.handlers['reevaluations.begin']({
      breakIds: [1, 2, 3],
      calibrationId: null,
      settings: {},
      by: 'bench 1',
    })
    host.reevaluation.reevaluations[0]!.breaks = 5000
    await page.getByRole('link', { name: 'Evaluating 0 of' }).waitFor()
    host.reevaluation.advance(1874)
    const mark = page.getByRole('link', { name: /^Evaluating 1874 of/ })
    await mark.waitFor()
    const { width, height } = page.viewportSize()!
    await page.setViewportSize({ width: 640, height: 400 })
    // The names of the pages have the second line of the head
    const lines = () =>
      page.evaluate(() => {
        const middles = [...document.querySelectorAll('.frame-head > *')].map((part) => {
          const { top, height } = part.getBoundingClientRect()
          return top + height / 2
        })
        middles.sort((one, other) => one - other)
        return middles.filter((middle, at) => at === 0 || Math.abs(middle - middles[at - 1]!) > 10).length
      })
    expect(await lines()).toBe(2)
    await page.setViewportSize({ width, height })
    await mark.focus()
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: /^Evaluating 5000 breaks again/ }).waitFor()
    expect(await mark.count()).toBe(0)
    host.reevaluation.advance(2200)
    await page.getByText('2200 of 5000', { exact: true }).waitFor()
  })

  it('is cancelled by a key, and keeps what was found without counting it', async () => {
    const { page } = opened
    await page.getByRole('button', { name: 'Cancel' }).focus()
    await page.keyboard.press('Enter')
    await expect
      .poll(() => host.calls.findLast(({ name }) => name === 'task.cancel')?.input)
      .toEqual({ task: 'reevaluation' })
    host.reevaluation.end('cancelled', 30)
    await page.getByText('Somebody stopped it after 30 of 5000.').waitFor()
    await page.getByRole('button', { name: 'Adopt these results' }).waitFor()
  })

  it('says of which breaks a person has spoken, in words also where only a mark is seen', async () => {
    const { page } = opened
    await page.getByText('1 peak is as a person said, 1 break is set aside: that stays so').waitFor()
    const row = (number: string) => page.getByRole('row', { name: number })
    expect(await row('C1-LL-09').textContent()).toMatch(/picked by hand by bench 1: the joint cracked there/)
    await row('C1-LL-09').scrollIntoViewIfNeeded()
    expect(await row('U3-LL-02').getByText('set aside').getAttribute('title')).toMatch(/fixture touched/)
  })

  it('lets a key lead away from it', async () => {
    const { page } = opened
    await page.keyboard.press('b')
    await page.getByRole('heading', { level: 1, name: 'Waiting for load' }).waitFor()
    expect(await page.getByRole('link', { name: /^Evaluating/ }).count()).toBe(0)
    expect(opened.problems).toEqual([])
  })
})
