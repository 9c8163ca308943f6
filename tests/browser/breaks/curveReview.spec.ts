import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { procedures } from '#contract/procedures.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { loadSpecimen } from '../harness/loadSpecimen.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { type OwnEngine, openOwnEngine, type RealEngine } from '../harness/ownEngine.ts'
import { savedFile } from '../harness/savedFile.ts'
import { tabTo } from '../harness/tabTo.ts'

/** A break on the virtual amplifier, reviewed and overruled with keys alone: engine, archive, disk and time are real. */
describe.skipIf(chromiumPath === null)('a review of a curve by keyboard', () => {
  let own: OwnEngine
  let engine: RealEngine
  let opened: OpenedPage
  let foundN = 0

  beforeAll(async () => {
    own = await openOwnEngine()
    engine = own.engine
    const { handlers } = engine
    await handlers['preferences.set']({ cautionsRead: true, operator: 'bench 1', nPerCount: 0.012, capacityN: 20_000 })
    const fields = { number: 'C1-LL-01', adhesive: 'casein C1', areaMm2: 600 }
    const added = await handlers['specimens.add'](procedures['specimens.add'].input.parse({ fields, by: 'bench 1' }))
    await handlers['bench.takeSpecimen']({ specimenId: added.specimenId, again: false })
    opened = await openPage({ host: 'loopback', engine })
    await opened.page.getByRole('navigation').waitFor()
  })
  afterAll(async () => {
    await opened?.close()
    await own?.close()
  })

  const heading = (name: string | RegExp) => opened.page.getByRole('heading', { name, level: 1 }).waitFor()
  const summary = async () => (await engine.handlers['breaks.get']({ breakId: 1 })).summary

  async function tabToButton(words: string) {
    for (let i = 0; i < 60; i++) {
      await opened.page.keyboard.press('Tab')
      if ((await opened.page.evaluate(() => document.activeElement?.textContent)) === words) return
    }
    throw new Error(`Tab does not reach "${words}"`)
  }

  it('breaks a block and opens its curve with C', async () => {
    // The page leads here by itself once it is connected, and must not do so after the key
    await heading('Connect an amplifier')
    const source = { kind: 'virtual', scenario: 'pop-in', rateHz: 200, seed: 3, speed: 10, byItself: false } as const
    await engine.handlers['bench.connect'](procedures['bench.connect'].input.parse({ source }))
    await opened.page.keyboard.press('b')
    await heading('Waiting for load')
    await loadSpecimen(opened.page)
    await heading(/^Broke at/)
    foundN = (await summary()).peakN ?? Number.NaN
    expect(foundN).toBeGreaterThan(100)
    // Until the break is stored, the key means no break
    await opened.page.getByRole('link', { name: /^Curve/ }).waitFor()
    await opened.page.keyboard.press('c')
    await heading('C1-LL-01 broke')
  })

  it('zooms, goes to an event and back to the whole curve', async () => {
    const { page } = opened
    await page.getByRole('button', { name: /^Pop-in/ }).waitFor()
    await page.getByRole('application').waitFor()
    await page.keyboard.press('c')
    await page.keyboard.press('+')
    await page.getByText(/^[\d.]+ to [\d.]+ s$/).waitFor()
    const pressed = async () => (await page.locator('.event-list [aria-pressed=true]').allTextContents()).join()
    for (let i = 0; i < 12 && !(await pressed()).startsWith('Pop-in'); i++) {
      const before = await pressed()
      await page.keyboard.press('.')
      await expect.poll(pressed).not.toBe(before)
    }
    await page.getByRole('button', { name: /^Pop-in/, pressed: true }).waitFor()
    await page.keyboard.press('Escape')
    await page.getByText('whole curve').waitFor()
  })

  it('goes through the events with the arrow keys too', async () => {
    const { page } = opened
    await tabTo(opened.page, '.event-list button')
    await page.keyboard.press('ArrowDown')
    await page.locator('.event-list li:nth-child(2) [aria-pressed=true]').waitFor()
    await page.keyboard.press('Escape')
    await page.getByText('whole curve').waitFor()
  })

  it('shows a filter beside the raw curve by its name, and says why another cannot be had', async () => {
    const { page } = opened
    await tabTo(opened.page, 'select')
    await page.keyboard.type('moving')
    await page.getByText(/moving average.*for looking only/).waitFor()
    await page.keyboard.press('Home')
    for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowDown')
    // 200 samples a second are far too few for a class of 1000
    await page.locator('.curve-legend .field-error').waitFor()
    expect(await page.locator('.curve-legend .field-error').textContent()).toMatch(/1000/)
    await page.keyboard.press('Home')
  })

  it('picks the peak by hand with P, and the new peak stands in the list', async () => {
    const { page } = opened
    await tabTo(opened.page, '[role=application]', 'Shift+Tab')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('p')
    await heading('Pick the peak by hand: C1-LL-01')
    await page.locator('.before-after strong').waitFor()
    await page.keyboard.type('the joint failed here')
    await tabToButton('Take this sample')
    await page.keyboard.press('Enter')
    await page.locator('.strip-word').getByText('Peak picked by hand by bench 1').waitFor()
    const { peakN, overruled, flags } = await summary()
    expect(peakN).toBeLessThan(foundN)
    expect(overruled).toMatchObject({ kind: 'peak-picked', reason: 'the joint failed here', foundPeakN: foundN })
    expect(flags).toContain('peak-picked')
    await page.keyboard.press('k')
    await heading('Breaks')
    const row = page.getByRole('row', { name: /C1-LL-01/ })
    await row.getByText('peak picked by hand', { exact: false }).first().waitFor()
    expect(await row.textContent()).toContain(String(Math.round(peakN ?? 0)).slice(0, 3))
  })

  it('takes it back, and the peak found counts again', async () => {
    const { page } = opened
    await tabTo(opened.page, 'tr[data-index]')
    await page.keyboard.press('Enter')
    await heading('C1-LL-01 broke')
    await page.locator('.strip-word').getByText('Peak picked by hand by bench 1').waitFor()
    await tabToButton('Use the peak found')
    await page.keyboard.press('Enter')
    await heading('Use the peak found: C1-LL-01')
    await page.keyboard.type('looked at the curve again')
    await tabToButton('Take it back')
    await page.keyboard.press('Enter')
    await page.getByText('Found by the program. If it is wrong:', { exact: false }).waitFor()
    expect(await summary()).toMatchObject({ peakN: foundN, overruled: null })
    await page.getByText('Back to the peak found', { exact: false }).waitFor()
    // The button that began it is gone; the focus stays with those beside it
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Pick the peak by hand')
  })

  it('declares the early drop the failure', async () => {
    const { page } = opened
    await tabToButton('Declare premature failure')
    await page.keyboard.press('Enter')
    await heading('Premature failure: C1-LL-01')
    const shown = await page.locator('.before-after strong').textContent()
    await page.keyboard.type('the joint cracked there')
    await tabToButton('Declare it')
    await page.keyboard.press('Enter')
    await page.locator('.strip-word').getByText('Declared a premature failure by bench 1').waitFor()
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Pick the peak by hand')
    const { summary: counted, evaluations } = await engine.handlers['breaks.get']({ breakId: 1 })
    const popIn = evaluations[0]!.result.events.find(({ kind }) => kind === 'pop-in')!
    const whole = { breakId: 1, fromS: null, toS: null, maxPoints: null }
    const { timeS, force } = await engine.handlers['breaks.curve'](whole)
    const before = force.filter((_, i) => timeS[i]! >= popIn.startTimeS - 0.02 && timeS[i]! <= popIn.endTimeS)
    expect(counted.peakN).toBeLessThan(foundN)
    expect(counted.peakN).toBe(Math.max(...before))
    // What the dialog said is what counts now, to the last digit shown.
    const figure = await page.locator('dd.strip-main').first().textContent()
    expect(figure!.trim().length).toBeGreaterThan(2)
    expect(shown!.replaceAll(/\s/g, '')).toContain(figure!.replaceAll(/\s/g, '').match(/^[\d.,]+N/)![0])
  })

  it('saves the curve with its marks, and says below it what it rests on', async () => {
    const { name, content } = await savedFile(opened.page, 'Save as SVG')
    expect(name).toMatch(/^load-curve-of-break-1-.*\.svg$/)
    const text = content.toString('utf8')
    expect(text).toContain('failure as declared')
    expect(text).toMatch(/Specimen C1-LL-01 casein C1, no calibration\. Curve SHA-256 [0-9a-f]{16}\./)
    expect(text).toContain('Simulated: nobody measured')
  })

  it('rejects the break with a cause and a reason', async () => {
    const { page } = opened
    await tabToButton('Set aside')
    await page.keyboard.press('Enter')
    await heading('Set aside: C1-LL-01')
    await page.keyboard.press('Space')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Tab')
    await page.keyboard.type('number on the block misread')
    await tabToButton('Set aside')
    await page.keyboard.press('Enter')
    await page.getByText('Set aside, not used in results: wrong specimen; number on the block misread').waitFor()
    const { setAside, setAsideCause, overruled } = await summary()
    expect({ setAside, setAsideCause }).toEqual({
      setAside: 'number on the block misread',
      setAsideCause: 'wrong-block',
    })
    expect(overruled?.kind).toBe('premature-failure')
  })

  it('goes on to its group', async () => {
    await tabToButton('Compare with its group')
    await opened.page.keyboard.press('Enter')
    await opened.page.waitForURL(/#\/compare\/1$/)
  })

  it('reported no error anywhere on the way', () => expect(opened.problems).toEqual([]))
})
