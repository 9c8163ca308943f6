import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { BreakRow } from '#contract/breaks/break.ts'
import { createScriptedHost, type ScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from '../harness/chromium.ts'
import { type OpenedPage, openPage } from '../harness/openPage.ts'

const many = 10_000

/** A host with a list of ten thousand breaks, newest first. */
function hostOfMany(): ScriptedHost {
  const host = createScriptedHost()
  const one = host.addBreak(4812)
  const rows: BreakRow[] = Array.from({ length: many }, (_, i) => ({ ...one, breakId: many - i, block: null }))
  Object.assign(host.handlers, {
    'breaks.list': async ({ offset, limit }: { offset: number; limit: number }) => {
      host.calls.push({ name: 'breaks.list', input: { offset, limit } })
      return { total: many, rows: rows.slice(offset, offset + limit) }
    },
    'breaks.ids': async (input: unknown) => {
      host.calls.push({ name: 'breaks.ids', input })
      return rows.map(({ breakId }) => breakId)
    },
  })
  return host
}

describe.skipIf(chromiumPath === null)('selecting among ten thousand breaks', () => {
  let host: ScriptedHost
  let opened: OpenedPage
  beforeAll(async () => {
    host = hostOfMany()
    opened = await openPage({ host: 'loopback', engine: host })
    await opened.page.waitForSelector('.bench')
    await opened.page.keyboard.press('k')
    await opened.page.locator('tr[data-index="0"] strong').waitFor()
  })
  afterAll(async () => opened?.close())

  const bar = (words: string) => opened.page.getByRole('region', { name: 'Selected breaks' }).getByText(words).waitFor()
  const asked = (name: string) => host.calls.filter((call) => call.name === name).length

  it('ticks a row by its box without opening it', async () => {
    await opened.page.getByRole('checkbox', { name: `Select break ${many - 2}`, exact: true }).check()
    await bar('1 selected')
    expect(new URL(opened.page.url()).hash).toBe('#/breaks')
  })

  it('ticks all from there to a box clicked with Shift', async () => {
    const box = opened.page.getByRole('checkbox', { name: `Select break ${many - 6}`, exact: true })
    await box.click({ modifiers: ['Shift'] })
    await bar('5 selected')
    expect(asked('breaks.ids')).toBe(0)
  })

  it('selects from here to the far end by number alone, without fetching the rows between', async () => {
    await opened.page.locator('tr[data-index="10"]').focus()
    const before = asked('breaks.list')
    await opened.page.keyboard.press('Shift+End')
    await bar(`${many - 10 + 5} selected`)
    expect(asked('breaks.ids')).toBe(1)
    expect(asked('breaks.list') - before).toBeLessThanOrEqual(3)
    await opened.page.locator(`tr[data-index="${many - 1}"][data-picked]`).waitFor()
  })

  it('comes back from a record to the row that it was opened from, by the browser and by the page’s own link', async () => {
    const last = `tr[data-index="${many - 1}"]`
    for (const back of ['browser', 'link']) {
      await opened.page.locator(last).focus()
      await opened.page.keyboard.press('Enter')
      // The list has a button of the same name as the record.
      await opened.page.locator('.record-head h1').waitFor()
      if (back === 'browser') await opened.page.goBack()
      else await opened.page.locator('.crumb a').first().click()
      await opened.page.waitForSelector(`${last}:focus`)
      await bar(`${many - 10 + 5} selected`)
    }
  })

  it('says that so many cannot be compared at once, and does not try', async () => {
    await bar('At most 200 are compared at once.')
    await opened.page.getByRole('button', { name: 'Compare', exact: true }).click({ force: true })
    expect(new URL(opened.page.url()).hash).toBe('#/breaks')
  })

  it('still knows what is selected after a look at another page', async () => {
    await opened.page.keyboard.press('s')
    await opened.page.getByRole('heading', { name: 'Specimens', level: 1 }).waitFor()
    await opened.page.keyboard.press('k')
    await bar(`${many - 5} selected`)
  })

  it('selects all that fit, and none', async () => {
    await opened.page.getByRole('button', { name: 'Select all 10\u2009000 found' }).click()
    await bar('10\u2009000 selected')
    await opened.page.getByRole('button', { name: 'Select none' }).click()
    await opened.page.getByRole('region', { name: 'Selected breaks' }).waitFor({ state: 'detached' })
    expect(opened.problems).toEqual([])
  })

  it('hands the selection on to be evaluated again', async () => {
    // The list is still where it was left, at its end.
    await opened.page.locator('.long-table').evaluate((list) => list.scrollTo(0, 0))
    await opened.page.locator('tr[data-index="3"]').focus()
    await opened.page.keyboard.press('Space')
    await opened.page.getByRole('button', { name: 'Evaluate again' }).click()
    await expect.poll(() => new URL(opened.page.url()).hash).toBe('#/reevaluations/new')
  })
})
