import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { ParsedInputOf } from '#contract/procedures.ts'
import { benchAtRest, freshInfo } from '#tests/fakes/benchAtRest.ts'
import { createScriptedEngine, type ScriptedEngine } from '#tests/fakes/scripted/scriptedEngine.ts'
import { chromiumPath } from './harness/chromium.ts'
import { hosts, type OpenedPage, openPage } from './harness/openPage.ts'
import { tabTo } from './harness/tabTo.ts'

describe.skipIf(chromiumPath === null).each(hosts)('the built page behind the %s host', (host) => {
  let engine: ScriptedEngine
  let opened: OpenedPage
  const changes: ParsedInputOf<'preferences.set'>[] = []

  beforeAll(async () => {
    engine = createScriptedEngine({
      'app.info': async () => freshInfo,
      'bench.state': async () => benchAtRest,
      'ports.list': async () => [],
      'specimens.list': async () => ({ total: 0, rows: [] }),
      'breaks.list': async () => ({ total: 0, rows: [] }),
      'preferences.set': async (change) => {
        changes.push(change)
        return { ...freshInfo.preferences, units: 'US' }
      },
    })
    opened = await openPage({ host, engine })
    await opened.page.getByRole('navigation').waitFor()
  })
  afterAll(() => opened.close())

  test('loads under the strict policy and has nothing to complain of', async () => {
    expect(await opened.page.title()).toContain('Breakledger')
    expect(new URL(opened.page.url()).search).toBe('')
    expect(opened.problems).toEqual([])
  })

  test('brings its typefaces, which are there before anything is shown, with digits of one width', async () => {
    const { states, widths } = await opened.page.evaluate(() => {
      const ink = document.createElement('canvas').getContext('2d')!
      const families = ['Roboto', '"Source Serif 4"', '"Roboto Mono"']
      return {
        states: [...document.fonts].map(({ family, status }) => `${family} ${status}`),
        widths: families.map((family) => {
          ink.font = `500 100px ${family}`
          return new Set([...'0123456789'].map((digit) => ink.measureText(digit).width)).size
        }),
      }
    })
    expect(states.length).toBeGreaterThan(3)
    expect(states.filter((state) => !state.endsWith(' loaded'))).toEqual([])
    expect(widths).toEqual([1, 1, 1])
  })

  test('asks the program when a person asks the page', async () => {
    await opened.page.keyboard.press('u')
    await expect.poll(() => changes).toEqual([{ units: 'US' }])
  })

  test('shows what the program says unasked', async () => {
    const connection = { ...benchAtRest.connection, status: 'open', label: 'amplifier on the left bench' } as const
    engine.emit('bench.state', { ...benchAtRest, connection })
    await opened.page.getByText('amplifier on the left bench').first().waitFor()
    engine.emit('trouble', { code: 'disk-full', message: 'The disk is full.', hint: 'Make room.' })
    await opened.page.getByText('The disk is full.').first().waitFor()
    expect(opened.problems).toEqual([])
  })

  test('shows by keyboard the licences of all that it is made of', async () => {
    const { page } = opened
    await tabTo(page, '[href="#/settings"]')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: 'Settings' }).waitFor()
    await tabTo(page, '[href="#/settings/licences"]')
    await page.keyboard.press('Enter')
    const texts = await page.locator('.licence-texts').textContent()
    expect(texts).toMatch(/^Breakledger\n\nMIT License/)
    expect(texts).toContain('\nbetter-sqlite3 ')
    expect(opened.problems).toEqual([])
  })

  test('runs no script that was slipped into it, and goes nowhere else', async () => {
    const ran = await opened.page.evaluate(() => {
      const script = document.createElement('script')
      script.textContent = 'window.slippedIn = true'
      document.body.append(script)
      return 'slippedIn' in window
    })
    expect(ran).toBe(false)
    await opened.page.evaluate(() => {
      const frame = document.createElement('iframe')
      frame.src = 'data:text/html,x'
      document.body.append(frame)
    })
    await expect
      .poll(() => opened.problems.filter((problem) => problem.includes('Content Security Policy')).length)
      .toBe(2)
  })
})
