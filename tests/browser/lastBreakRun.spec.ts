import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from './harness/chromium.ts'
import { type OpenedPage, openPage } from './harness/openPage.ts'

/** What is on the screen and under the keys between a break and the next one. */
describe.skipIf(chromiumPath === null)('breaks that follow one another', () => {
  let host: ScriptedHost
  let opened: OpenedPage
  beforeAll(async () => {
    host = createScriptedHost()
    host.addBreak(4812)
    opened = await openPage({ host: 'loopback', engine: host })
  })
  afterAll(async () => opened?.close())

  test('a break whose record is not stored yet is never shown with the load of the one before', async () => {
    const { page } = opened
    await page.getByRole('heading', { name: /Broke at 4812.N/, level: 1 }).waitFor()
    host.setBench({ phase: 'broke', outcomeBreakId: null, runningPeak: 3100 })
    await page.getByRole('heading', { name: /Broke at 3100.N/, level: 1 }).waitFor()
    expect(await page.getByTestId('force').textContent()).toMatch(/^3.?100$/)
    expect(await page.locator('.readout [aria-live]').textContent()).toMatch(/3100.N/)
    await page.getByText('Storing the next result').waitFor()
    await page.keyboard.press('7')
    await page.keyboard.press('Enter')
    expect(host.calls.filter(({ name }) => name === 'breaks.assess')).toEqual([])
    host.setBench({ phase: 'broke', outcomeBreakId: 1 })
    await page.getByText('Storing the next result').waitFor({ state: 'detached' })
  })

  test('a note that was begun is finished for its own break, and then the next is shown', async () => {
    const { page } = opened
    await page.getByRole('textbox', { name: /Note/ }).focus()
    await page.keyboard.type('glue stayed on ')
    host.addBreak(3100)
    await page.getByText('The next result is stored.').waitFor()
    await page.keyboard.type('one face')
    await page.keyboard.press('Enter')
    await page.locator('.last-break-figures').getByText('3100').waitFor()
    expect(host.calls.filter(({ name }) => name === 'breaks.assess').map(({ input }) => input)).toEqual([
      expect.objectContaining({ breakId: 1, note: 'glue stayed on one face' }),
    ])
    expect(await page.getByRole('textbox', { name: /Note/ }).inputValue()).toBe('')
  })

  test('a specimen that broke comes on the bench again only after a question', async () => {
    const { page } = opened
    const [first, second] = host.specimens
    host.setBench({ specimen: second!, phase: 'waiting' })
    await page.evaluate(() => {
      location.hash = '#/specimens/1'
    })
    await page.getByRole('button', { name: 'Put on the bench' }).click()
    const question = page.getByRole('dialog', { name: `Break ${first!.fields.number} again?` })
    await question.getByText('broke 2 times already').waitFor()
    await question.getByRole('button', { name: 'Leave it' }).click()
    const taken = () => host.calls.filter(({ name }) => name === 'bench.takeSpecimen').map(({ input }) => input)
    expect(taken()).toEqual([])
    await page.getByRole('button', { name: 'Put on the bench' }).click()
    await question.getByRole('button', { name: 'Put it on the bench again' }).click()
    await page.getByText('on the bench now').waitFor()
    expect(taken()).toEqual([{ specimenId: 1, again: true }])
  })
})
