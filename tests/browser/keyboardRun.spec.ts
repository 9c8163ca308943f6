import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from './harness/chromium.ts'
import { loadSpecimen } from './harness/loadSpecimen.ts'
import { hosts, type OpenedPage, openPage } from './harness/openPage.ts'
import { framesOf } from './screens/screens.ts'

/** From the first screen to an assessed break and its record, with keys alone: no pointer is ever used. */
describe.skipIf(chromiumPath === null).each(hosts)(
  'a run through a break by keyboard behind the %s host',
  (hostName) => {
    let host: ScriptedHost
    let opened: OpenedPage

    beforeAll(async () => {
      host = createScriptedHost({ preferences: { source: null, cautionsRead: false } })
      host.setBench({
        connection: { status: 'closed', source: null, label: '', problem: null },
        phase: 'no-signal',
        lastBreak: null,
      })
      opened = await openPage({ host: hostName, engine: host })
    })
    afterAll(async () => opened?.close())

    const heading = (name: string | RegExp) => opened.page.getByRole('heading', { name, level: 1 }).waitFor()
    const focused = () => opened.page.evaluate(() => document.activeElement?.textContent ?? '')
    const lastInput = (name: string) => host.calls.findLast((call) => call.name === name)?.input
    async function tabToWords(words: string) {
      for (let i = 0; i < 40; i++) {
        await opened.page.keyboard.press('Tab')
        if ((await focused()).includes(words)) return
      }
      throw new Error(`Tab does not reach "${words}"`)
    }

    it('starts the virtual bench from the first screen', async () => {
      await heading('Connect an amplifier')
      await tabToWords('Try it with a virtual bench')
      await opened.page.keyboard.press('Enter')
      await heading('Before you load a specimen')
      expect(lastInput('bench.connect')).toMatchObject({ source: { kind: 'virtual' } })
    })

    it('shows the cautions once, and goes on with Enter', async () => {
      expect(await focused()).toContain('I have read this')
      await opened.page.keyboard.press('Enter')
      await opened.page.locator('dialog').waitFor({ state: 'detached' })
      await heading('Waiting for load')
      expect(lastInput('preferences.set')).toEqual({ cautionsRead: true })
      // Where single keys act, Enter too
      expect(await focused()).toBe('Waiting for load')
    })

    it('takes the zero with T and loads with L', async () => {
      await opened.page.keyboard.press('t')
      await loadSpecimen(opened.page)
      await heading('Loading')
      expect(lastInput('bench.tare')).toEqual({})
      host.emit('live.frame', framesOf(4812, 2, 9.4))
      await opened.page.waitForFunction(() =>
        document.querySelector('[data-testid=force]')?.textContent?.startsWith('48'),
      )
    })

    it('says in words at which load it broke', async () => {
      host.addBreak(4812)
      await heading(/Broke at 4812.N/)
      await opened.page.getByText('8.02').first().waitFor()
      await opened.page.getByText('uncalibrated', { exact: true }).first().waitFor()
    })

    it('describes the faces and saves with keys', async () => {
      const { keyboard } = opened.page
      await keyboard.type('75')
      await keyboard.press('f')
      await keyboard.press('ArrowRight')
      await keyboard.press('o')
      await keyboard.type('a splinter at one edge')
      await keyboard.press('Enter')
      await opened.page.getByText('Saved', { exact: true }).waitFor()
      expect(lastInput('breaks.assess')).toEqual({
        breakId: 1,
        woodFailurePercent: 75,
        failurePattern: 'CSF',
        note: 'a splinter at one edge',
        by: 'bench 1',
      })
    })

    it('sets the break aside with a reason and takes it back, without deleting anything', async () => {
      const { keyboard } = opened.page
      await keyboard.press('x')
      await heading('Set aside: C1-LL-01')
      await keyboard.press('Space')
      await keyboard.press('ArrowRight')
      await keyboard.press('ArrowRight')
      await keyboard.press('Tab')
      await keyboard.type('fixture touched')
      await tabToWords('Set aside')
      await keyboard.press('Enter')
      await opened.page.locator('dialog').waitFor({ state: 'detached' })
      await opened.page.getByText('Set aside: fixture touched; fixture touched').waitFor()
      expect(lastInput('breaks.setAside')).toMatchObject({ cause: 'fixture-touched', reason: 'fixture touched' })
      await keyboard.press('x')
      await heading('Count again: C1-LL-01')
      await keyboard.type('checked the curve')
      await tabToWords('Count again')
      await keyboard.press('Enter')
      await opened.page.locator('dialog').waitFor({ state: 'detached' })
      expect(host.breaks[0]?.decisions.map(({ kind }) => kind)).toEqual(['set-aside', 'taken-back'])
    })

    it('goes on to the next specimen with N', async () => {
      await opened.page.keyboard.press('n')
      await opened.page.getByRole('link', { name: 'C1-LL-02' }).waitFor()
    })

    it('finds the break in the list and opens its record and curve', async () => {
      const { keyboard } = opened.page
      await keyboard.press('k')
      await heading('Breaks')
      await keyboard.press('/')
      await keyboard.type('casein')
      await opened.page.getByRole('row', { name: /break 1/ }).waitFor()
      await keyboard.press('ArrowDown')
      await keyboard.press('Enter')
      await heading('C1-LL-01 broke')
      await opened.page.getByRole('application').focus()
      await keyboard.press('+')
      await opened.page.getByText(/\d s$/).first().waitFor()
      await keyboard.press('ArrowRight')
      await opened.page.getByText(/s · .* N/).waitFor()
    })

    it('switches the whole program to US units with U', async () => {
      await opened.page.getByRole('heading', { level: 1 }).waitFor()
      await opened.page.keyboard.press('u')
      await opened.page.getByText('lbf').first().waitFor()
      await opened.page.getByText('psi').first().waitFor()
      expect(lastInput('preferences.set')).toEqual({ units: 'US' })
    })

    it('reported no error anywhere on the way', () => expect(opened.problems).toEqual([]))
  },
)
