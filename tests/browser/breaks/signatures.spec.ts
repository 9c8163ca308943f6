import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'
import { at } from '../screens/screenSteps.ts'

/** Dialogs that ask who and why, while nobody is named in the settings. */
describe.skipIf(chromiumPath === null)('what a person signs', () => {
  let opened: OpenedPage
  let host: ScriptedHost
  const dialog = () => opened.page.locator('dialog[open]')
  const focused = () => opened.page.evaluate(() => document.activeElement?.closest('.field')?.textContent ?? '')

  beforeAll(async () => {
    host = createScriptedHost({ preferences: { operator: '' } })
    host.addBreak(4812)
    opened = await openPage({ host: 'loopback', engine: host })
    await at('#/breaks/1')(opened.page)
  })
  afterAll(async () => opened?.close())

  it('begins with the question of the case, and goes back to what was left out', async () => {
    await opened.page.getByRole('button', { name: 'Set aside' }).click()
    await dialog().getByRole('button', { name: 'Set aside' }).click()
    await dialog().getByText('Choose what happened').waitFor()
    await dialog().locator('[data-wrong] input:focus').waitFor()
    await opened.page.keyboard.press('Space')
    await dialog().getByRole('button', { name: 'Set aside' }).click()
    await dialog().locator('textarea:focus').waitFor()
    expect(await focused()).toContain('Give a reason')
    await opened.page.keyboard.type('heard it slip')
    await dialog().getByRole('button', { name: 'Set aside' }).click()
    await dialog().locator('input:not([type="radio"]):focus').waitFor()
    expect(await focused()).toContain('Enter your name or initials.')
    expect(host.breaks[0]?.decisions).toEqual([])
  })

  it('signs when nothing is missing', async () => {
    await opened.page.keyboard.type('bench 2')
    await opened.page.keyboard.press('Enter')
    await dialog().waitFor({ state: 'detached' })
    expect(host.breaks[0]?.decisions).toMatchObject([{ kind: 'set-aside', by: 'bench 2', reason: 'heard it slip' }])
  })

  it('proposes the name that was said last, and the reasons that are often given', async () => {
    await opened.page.getByRole('button', { name: 'Count again' }).click()
    expect(await dialog().getByLabel('Name or initials').inputValue()).toBe('bench 2')
    await dialog().getByRole('button', { name: 'set aside by mistake' }).click()
    expect(await dialog().getByLabel('Reason').inputValue()).toBe('set aside by mistake')
    await opened.page.keyboard.press('Escape')
    await opened.page.getByRole('button', { name: 'Leave without saving' }).click()
    await dialog().waitFor({ state: 'detached' })
  })

  it('remembers who signs through other pages and a page loaded anew, and shows it where entries are made', async () => {
    await at('#/specimens/new')(opened.page)
    await opened.page.getByText('Recorded as bench 2.').waitFor()
    await opened.page.reload()
    await opened.page.getByText('Recorded as bench 2.').waitFor()
    await opened.page.getByRole('button', { name: 'Change the name' }).click()
    await opened.page.keyboard.press('Control+a')
    await opened.page.keyboard.type('bench 3')
    await opened.page.keyboard.press('Enter')
    await opened.page.getByText('Recorded as bench 3.').waitFor()
    await at('#/breaks/1')(opened.page)
    await opened.page.getByRole('button', { name: 'Count again' }).click()
    expect(await dialog().getByLabel('Name or initials').inputValue()).toBe('bench 3')
    await opened.page.keyboard.press('Escape')
    await dialog().waitFor({ state: 'detached' })
    expect(opened.problems).toEqual([])
  })
})
