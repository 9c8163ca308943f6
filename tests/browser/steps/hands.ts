import type { Page } from 'playwright-core'

/** A person who has the keyboard alone, or the mouse (and types only what must be typed); each does one step after another. */
export type Hands = {
  readonly kind: 'keyboard' | 'mouse'
  /** Keys pressed and buttons of the mouse clicked; a text typed into one field is one step. */
  steps(): number
  /** A key of the program, or a click on what does the same. */
  press(key: string, orClick: string | RegExp): Promise<void>
  /** Chooses a button, a link or a row: Tab to it and Enter, or a click. */
  choose(name: string | RegExp): Promise<void>
  /** Goes to a control with Tab; not for hands at the mouse. */
  goTo(name: string | RegExp): Promise<void>
  /** Goes to a field, unless it has the focus, and types a text over what stands in it. */
  fill(label: string, text: string): Promise<void>
  /** Types where the focus is. */
  type(text: string): Promise<void>
  /** Presses a key; not for hands at the mouse. */
  key(...keys: string[]): Promise<void>
  /** Clicks at a place of the page, in pixels. */
  clickAt(x: number, y: number): Promise<void>
}

/** From one end of the fullest page to the other. */
const mostTabs = 150

/** Hands on a page. */
export function handsOn(page: Page, kind: Hands['kind']): Hands {
  let steps = 0
  const key = async (...keys: string[]) => {
    for (const one of keys) {
      await page.keyboard.press(one)
      steps++
    }
  }
  const type = async (text: string) => {
    await page.keyboard.type(text)
    steps++
  }
  const click = async (name: string | RegExp) => {
    const { found } = await named(page, name)
    await found.click()
    steps++
  }
  const tabTo = async (name: string | RegExp) => {
    await named(page, name)
    for (let i = 0; i < mostTabs; i++) {
      if (fits(await focusName(page), name)) return
      await key('Tab')
    }
    throw new Error(`Tab does not reach ${name}`)
  }
  const choose = async (name: string | RegExp) => {
    if (kind === 'mouse') return click(name)
    await tabTo(name)
    await key('Enter')
  }
  return {
    kind,
    steps: () => steps,
    press: (one, orClick) => (kind === 'mouse' ? click(orClick) : key(one)),
    choose,
    goTo: tabTo,
    async fill(label, text) {
      if (!fits(await focusName(page), label)) await (kind === 'mouse' ? click(label) : tabTo(label))
      // Tab selects what stands in a field; a click, or the page that put the focus there, does not
      const stands = await page.evaluate(() => {
        const { value, selectionStart, selectionEnd } = document.activeElement as HTMLInputElement
        return value.length > (selectionEnd ?? 0) - (selectionStart ?? 0)
      })
      if (stands) await key('Control+a')
      await type(text)
    },
    type,
    key,
    async clickAt(x, y) {
      await page.mouse.click(x, y)
      steps++
    },
  }
}

const fits = (found: string, name: string | RegExp) =>
  typeof name === 'string' ? found.startsWith(name) : name.test(found)

/** How long a control is waited for in the dialog that is open, or in the page, before looking again where it has to be, ms. */
const lookMs = 1000
const mostLooks = 200

/** Waits for a control of that name: in a dialog while one is open, which may be about to close. */
async function named(page: Page, name: string | RegExp) {
  for (let looks = 1; ; looks++) {
    const found = await whereItShouldBe(page, name)
    try {
      await found.waitFor({ timeout: lookMs })
      return { found }
    } catch (thrown) {
      if (looks === mostLooks) throw thrown
    }
  }
}

async function whereItShouldBe(page: Page, name: string | RegExp) {
  const exact = typeof name === 'string' ? new RegExp(`^${name.replaceAll(/[.*+?^${}()|[\]\\/]/g, '\\$&')}`) : name
  const inPlace = page.locator('dialog[open]').last()
  const place = (await inPlace.count()) > 0 ? inPlace : page.locator('body')
  return (
    place
      .getByRole('button', { name: exact })
      .or(place.getByRole('link', { name: exact }))
      .or(place.getByRole('row', { name: exact }))
      .or(place.getByRole('textbox', { name: exact }))
      .or(place.getByRole('searchbox', { name: exact }))
      .or(place.getByRole('combobox', { name: exact }))
      .or(place.getByRole('switch', { name: exact }))
      .or(place.getByRole('checkbox', { name: exact }))
      // A choice among several is clicked on its label
      .or(place.locator('.choice label', { hasText: exact }))
      .first()
  )
}

/** What has the focus is called: its labels, its own name, or its text. */
const focusName = (page: Page) =>
  page.evaluate(() => {
    const has = document.activeElement
    if (has === null || has === document.body) return ''
    const labels = 'labels' in has ? [...((has as HTMLInputElement).labels ?? [])] : []
    const names = [...labels.map((label) => label.textContent), has.getAttribute('aria-label')]
    return (names.filter(Boolean).join(' ') || (has.textContent ?? '')).trim()
  })
