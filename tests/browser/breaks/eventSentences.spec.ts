import { afterEach, describe, expect, it } from 'vitest'
import { madeEvent } from '#tests/fakes/madeEvents.ts'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { reviewScreens } from '../screens/reviewScreens.ts'
import { at, settle } from '../screens/screenSteps.ts'

const large = { width: 1920, height: 1080 }

/** What is shown of the sentences that say what an event may mean. */
describe.skipIf(chromiumPath === null)('the sentences of the events of a curve', () => {
  let opened: OpenedPage
  afterEach(async () => opened?.close())

  async function show(host: ScriptedHost) {
    opened = await openPage({ host: 'loopback', engine: host })
    await at('#/breaks/4')(opened.page)
  }
  /** The events whose sentence is cut off. */
  async function cutOff(): Promise<string[]> {
    await settle(opened.page)
    return opened.page.evaluate(() =>
      [...document.querySelectorAll('.event-list li')]
        .filter((event) => {
          const meaning = event.querySelector('.event-meaning')!
          return meaning.scrollHeight > meaning.clientHeight + 1 && getComputedStyle(meaning).overflowY === 'hidden'
        })
        .map((event) => event.querySelector('strong')!.textContent),
    )
  }

  it('are whole where there are few', async () => {
    const host = createScriptedHost()
    const events = [
      madeEvent({
        ...{ kind: 'stick-slip', startTimeS: 6.4, endTimeS: 7.9, dropN: 265, dropPercent: 8.6, cycles: 5 },
        ...{ fromN: 2934, percentOfPeak: 61, meanDropN: 226, leastDropN: 181, periodS: 0.3 },
      }),
      madeEvent({
        ...{ kind: 'final-drop', startTimeS: 9.4, endTimeS: 9.45, dropN: 4570, dropPercent: 95 },
        ...{ fromN: 4812, percentOfPeak: 100, manner: 'brittle' as const },
      }),
    ]
    for (let i = 0; i < 4; i++) host.addBreak(4812, {}, { events })
    await show(host)
    expect(await opened.page.locator('.event-meaning').count()).toBe(2)
    expect(await cutOff()).toEqual([])
  })

  it('are cut to two lines where many stand on a low screen, but for the one chosen, and never on a large one', async () => {
    await show(reviewScreens.find(({ name }) => name === 'curve')!.host())
    expect(await cutOff()).toContain('Stick-slip')
    await opened.page.getByRole('button', { name: /^Stick-slip/ }).click()
    expect(await cutOff()).not.toContain('Stick-slip')
    await opened.page.setViewportSize(large)
    expect(await cutOff()).toEqual([])
  })
})
