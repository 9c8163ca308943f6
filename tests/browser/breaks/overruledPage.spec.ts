import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { reviewScreens } from '../screens/reviewScreens.ts'
import { at, settle } from '../screens/screenSteps.ts'

/** The page of a break whose peak a person has overruled. */
describe.skipIf(chromiumPath === null)('the page of an overruled break', () => {
  let opened: OpenedPage
  let host: ScriptedHost
  beforeAll(async () => {
    const screen = reviewScreens.find(({ name }) => name === 'curve-premature')!
    host = screen.host()
    opened = await openPage({ host: 'loopback', engine: host })
    await screen.show(opened.page, host)
  })
  afterAll(async () => opened?.close())

  it('says that times and rates are still those of the peak found', async () => {
    const { page } = opened
    const said = page.getByText('Times and rates are those of the peak found, not of the load that counts.')
    expect(await said.count()).toBe(2)
  })

  it('takes no sample for a time beyond the curve', async () => {
    const { page } = opened
    await page.getByRole('button', { name: 'Pick the peak by hand' }).click()
    const dialog = page.locator('dialog[open]')
    await dialog.getByLabel('Time of the sample').fill('99999')
    await dialog.getByText('There is no sample within a second of that time').waitFor()
    await dialog.getByLabel('Time of the sample').fill('8.6')
    await dialog.getByText('The sample at 8.6').waitFor()
    await settle(page)
    expect(await dialog.getByText('There is no sample').count()).toBe(0)
  })

  it('gives the reason and the peak found on the page of its specimen too', async () => {
    const { page } = opened
    await page.keyboard.press('Escape')
    await page.getByRole('button', { name: 'Leave without saving' }).click()
    await at('#/specimens/1')(page)
    await page
      .getByText('premature failure by bench 1: the joint cracked there, seen on the face (found: 4812 N)')
      .and(page.locator('.break-line-why'))
      .waitFor()
  })

  it('gives the reason on the page of its specimen when it is set aside', async () => {
    const { page } = opened
    const signature = { by: 'bench 1', reason: 'heard it knock' }
    await host.handlers['breaks.setAside']({ breakId: 4, cause: 'fixture-touched', ...signature })
    await page.getByText('Set aside, not used in results: fixture touched; heard it knock').waitFor()
  })
})
