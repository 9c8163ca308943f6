import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { at } from '../screens/screenSteps.ts'

/** A break whose converter stood at its end: peak and strength are lower limits. */
describe.skipIf(chromiumPath === null)('a peak that is a lower limit', () => {
  let host: ScriptedHost
  let opened: OpenedPage
  beforeAll(async () => {
    host = createScriptedHost()
    host.addBreak(4812, { flags: ['clipped'] })
    host.addBreak(4700, { flags: ['clipped'], areaMm2: null, strengthMPa: null })
    opened = await openPage({ host: 'loopback', engine: host })
  })
  afterAll(async () => opened?.close())

  const atLeast = () => opened.page.locator('.strip-figures dt', { hasText: 'at least' })

  it('makes the strength a lower limit too', async () => {
    await at('#/breaks/1')(opened.page)
    await opened.page.getByText('Shear strength').waitFor()
    expect(await atLeast().allTextContents()).toEqual([
      expect.stringContaining('Peak load'),
      expect.stringContaining('Shear strength'),
    ])
  })

  it('says nothing of a strength that is not known', async () => {
    await at('#/breaks/2')(opened.page)
    await opened.page.getByText('area unknown').waitFor()
    expect(await atLeast().count()).toBe(1)
  })
})
