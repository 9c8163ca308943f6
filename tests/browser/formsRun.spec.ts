import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { scriptedPlan } from '#tests/fakes/scripted/scriptedReadings.ts'
import { chromiumPath } from './harness/chromium.ts'
import { type OpenedPage, openPage } from './harness/openPage.ts'
import { settle } from './screens/screenSteps.ts'
import { withHistory } from './screens/withHistory.ts'

/** What has the focus: its label or text, and what is said of it when it is wrong. null: the body of the page. */
const focusIn = (page: Page) =>
  page.evaluate(() => {
    const has = document.activeElement
    if (has === null || has === document.body) return null
    const labels = 'labels' in has ? [...((has as HTMLInputElement).labels ?? [])] : []
    const tied = (attribute: string) =>
      (has.getAttribute(attribute) ?? '').split(' ').map((id) => document.getElementById(id)?.textContent ?? '')
    const names = [
      ...labels.map((label) => label.textContent),
      ...tied('aria-labelledby'),
      has.getAttribute('aria-label'),
    ]
    return {
      name: names.filter(Boolean).join(' ') || (has.textContent ?? '').trim(),
      wrong: has.getAttribute('aria-invalid') === 'true' ? tied('aria-describedby').join(' ') : null,
    }
  })

/** Every form by keyboard: the focus is on its first field, then on what is wrong, and never on the body of the page. */
describe.skipIf(chromiumPath === null)('the focus in forms', () => {
  let host: ScriptedHost
  let opened: OpenedPage
  let page: Page

  beforeAll(async () => {
    host = withHistory(createScriptedHost())
    host.calibration.withCalibrations()
    host.calibration.weights = scriptedPlan.weights
    opened = await openPage({ host: 'loopback', engine: host })
    page = opened.page
    await page.getByRole('heading', { level: 1 }).waitFor()
  })
  afterAll(async () => opened?.close())

  /** Waits for the page to be at rest, and says what has the focus then. */
  async function focus() {
    await settle(page)
    const has = await focusIn(page)
    if (has === null) throw new Error('The focus fell to the body of the page.')
    return has
  }
  async function press(...keys: string[]) {
    for (const key of keys) await page.keyboard.press(key)
    return focus()
  }
  /** Goes on with Tab to a control by its words, and presses Enter. */
  async function choose(words: string) {
    for (let i = 0; i < 150; i++) {
      await page.keyboard.press('Tab')
      if ((await focusIn(page))?.name.startsWith(words)) return press('Enter')
    }
    throw new Error(`Tab does not reach "${words}"`)
  }
  async function go(hash: string) {
    await page.evaluate((to) => {
      location.hash = to
    }, hash)
    return focus()
  }
  const question = () => page.getByRole('heading', { name: 'Leave without saving?' })

  it('is on the heading of a page, and on the first field of a page that is a form', async () => {
    expect((await focus()).name).toBe(await page.locator('h1').first().textContent())
    expect((await press('s')).name).toBe('Specimens')
    expect((await choose('Add specimen')).name).toContain('Specimen number')
  })

  it('is on the field in error, also where only the archive could know', async () => {
    expect((await press('Enter')).wrong).toContain('Write the specimen number')
    await page.keyboard.type(host.specimens[0]!.fields.number)
    await press('Tab')
    await page.keyboard.type('casein C1')
    expect((await press('Enter')).wrong).toContain('already')
  })

  it('adds a batch with Ctrl and Enter, each with the next number, which typing replaces', async () => {
    await page.getByLabel('Specimen number').fill('Z-09')
    await page.getByLabel('Adhesive').fill('casein C1')
    const has = await press('Control+Enter')
    expect(has.name).toContain('Specimen number')
    await page.getByText('Z-09 added.').waitFor()
    await expect.poll(() => page.getByLabel('Specimen number').inputValue()).toBe('Z-10')
    await page.keyboard.type('Z-20')
    await press('Control+Enter')
    await page.getByText('Z-20 added.').waitFor()
    await expect.poll(() => page.getByLabel('Specimen number').inputValue()).toBe('Z-21')
    expect(await page.getByLabel('Adhesive').inputValue()).toBe('casein C1')
  })

  it('selects the next number as soon as it shows, also where the machine draws late', async () => {
    const selectedWhenShown = page.evaluate(async () => {
      const draws = window.requestAnimationFrame
      window.requestAnimationFrame = (call) => window.setTimeout(() => draws(call), 1000)
      const number = document.activeElement as HTMLInputElement
      while (number.value !== 'Z-22') await new Promise((resume) => setTimeout(resume))
      window.requestAnimationFrame = draws
      return number.value.slice(number.selectionStart ?? 0, number.selectionEnd ?? 0)
    })
    await page.keyboard.press('Control+Enter')
    expect(await selectedWhenShown).toBe('Z-22')
    await settle(page)
  })

  it('keeps 30 mm x 20 mm what they are when the units change, and asks about an area that is hardly one', async () => {
    await page.getByLabel('Overlap length').fill('30')
    await page.getByLabel('Overlap width').fill('20')
    host.setPreferences({ units: 'US' })
    await settle(page)
    const values = async () => [
      await page.getByLabel('Overlap length').inputValue(),
      await page.getByLabel('Bonded area').inputValue(),
    ]
    // NIST SP 811: 1 in = 25.4 mm, 1 in² = 645.16 mm².
    expect(await values()).toEqual(['1.1811', '0.930002'])
    host.setPreferences({ units: 'SI' })
    await settle(page)
    expect(await values()).toEqual(['30', '600'])
    await page.getByLabel('Overlap width').fill('20 in')
    await page.getByLabel('Overlap length').fill('30 in')
    await page.getByText('Look at the numbers and their units.').waitFor()
  })

  it('asks before a half-filled form is left by the Back button, a link or closing', async () => {
    await page.goBack()
    await question().waitFor()
    expect((await focus()).name).toBe('Stay here')
    expect((await press('Enter')).name).toContain('Overlap length')
    const asked = page.waitForEvent('dialog')
    await page.evaluate(() => setTimeout(() => location.reload()))
    const dialog = await asked
    expect(dialog.type()).toBe('beforeunload')
    await dialog.dismiss()
    await page.getByRole('link', { name: 'Breaks', exact: true }).click()
    await question().waitFor()
    await page.keyboard.press('Shift+Tab')
    expect((await press('Enter')).name).toBe('Breaks')
  })

  it('leaves a dialog with typed text only after a question, and gives the focus back', async () => {
    await go('#/specimens/5')
    expect((await choose('Correct')).name).toContain('Specimen number')
    await page.keyboard.type('X')
    expect((await press('Escape')).name).toBe('Stay here')
    expect((await press('Escape')).name).toContain('Specimen number')
    await press('Escape')
    await page.keyboard.press('Shift+Tab')
    expect((await press('Enter')).name).toBe('Correct')
    expect((await press('Enter', 'Escape')).name).toBe('Correct')
  })

  it('is on what was left out of a decision, and on the page after it', async () => {
    await go('#/breaks/3')
    await choose('Set aside')
    for (const words of ['Choose what happened', 'Give a reason']) {
      await page.locator('dialog button[type=submit]').focus()
      expect((await press('Enter')).wrong).toContain(words)
      if (words.startsWith('Choose')) await press('Space')
      else await page.keyboard.type('fixture touched')
    }
    await choose('Set aside')
    expect(await page.locator('dialog').count()).toBe(0)
  })

  it.each([
    ['Describe the faces', 'Wood failure'],
    ['Move to another specimen', 'Find the specimen'],
    ['Pick the peak by hand', 'Time of the sample'],
  ])('is on the first field of “%s”', async (button, first) => {
    await go('#/breaks/2')
    await choose(button)
    expect((await focus()).name).toContain(first)
    await press('Escape')
  })

  it('keeps the specimen in sight that a break is moved to, whatever is looked for next', async () => {
    await go('#/breaks/2')
    await choose('Move to another specimen')
    const offered = page.locator('dialog .pick-list label', { has: page.locator('strong') })
    await offered.nth(1).waitFor()
    await offered.first().click()
    const number = await offered.first().locator('strong').textContent()
    await page.getByLabel('Find the specimen').fill('no specimen is called so')
    await offered.nth(1).waitFor({ state: 'detached' })
    expect(await page.locator('dialog .pick-list label:has(:checked) strong').allTextContents()).toEqual([number])
    await page.keyboard.press('Escape')
    await choose('Leave without saving')
  })

  it('stays with weights that are added, refused and taken out', async () => {
    await go('#/calibration/weights')
    expect((await choose('Add a weight')).name).toContain('Name marked on it')
    expect((await press('Enter')).wrong).toContain('name that is marked')
    await page.keyboard.type('25 lb')
    await press('Tab')
    await page.keyboard.type('25 lb')
    expect((await press('Enter')).wrong).toContain('no limit for this mass')
    await page.getByLabel('Accuracy').selectOption('own')
    await page.getByLabel('May be off by').fill('1 oz')
    expect((await press('Enter')).name).toBe('Add a weight')
    expect(host.calibration.weights.at(-1)!.nominalKg).toBeCloseTo(11.33980925, 8)
    await choose('Take out 25 lb')
  })

  it('stays with settings and practices', async () => {
    await go('#/settings')
    await page.getByLabel('Your name or initials').focus()
    await page.keyboard.type(' and Ada')
    await press('Tab', 'Enter')
    expect((await choose('Add a practice')).name).toContain('Name')
    expect((await press('Enter')).wrong).toContain('name')
    await press('Escape')
  })

  it('stays on Listen while a port is heard, and on the field of a plan that cannot begin', async () => {
    await go('#/connect')
    if ((await page.locator('.port-form').count()) === 0) await choose('Connect my load cell')
    expect((await focus()).name).toContain('Path')
    expect((await choose('Listen')).name).toBe('Listen')
    // What listening proposed is not kept yet
    await page.evaluate(() => {
      location.hash = '#/calibration/run'
    })
    await page.getByRole('button', { name: 'Leave without saving' }).click()
    await page.locator('.plan button[type=submit]').focus()
    expect((await press('Enter')).wrong).toContain('latitude')
  })

  it('is on the result after the last reading', async () => {
    host.calibration.routineAfter(1)
    await settle(page)
    await page.locator('.work-buttons button').first().focus()
    host.calibration.routineAfter(3 * (2 * scriptedPlan.steps.length + 1), { phase: 'review' })
    await page.getByRole('heading', { name: 'Result' }).waitFor()
    expect((await focus()).name).toBe('Result')
  })

  it('hears no single key in a form, and hears it again after a note is written', async () => {
    await go('#/reevaluations/new')
    await press('b')
    expect(await page.locator('h1').textContent()).toBe('Evaluate again')
    await page.getByLabel('Name or initials').fill('')
    expect((await press('Enter')).wrong).not.toBeNull()
    await page.getByRole('link', { name: 'Bench' }).click()
    await question()
      .getByRole('button')
      .or(page.getByRole('button', { name: 'Leave without saving' }))
      .click()
    await focus()
    await press('o')
    await page.keyboard.type('a splinter')
    await press('Enter')
    await press('x')
    await page.getByRole('heading', { name: /^Set aside|^Take back/ }).waitFor()
    await press('Escape')
  })

  it('reported no error anywhere on the way', () => expect(opened.problems).toEqual([]))
})
