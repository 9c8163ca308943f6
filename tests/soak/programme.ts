import type { Page } from 'playwright-core'
import { createRandom } from '#domain/numbers/random.ts'
import { chromiumPath } from '#tests/browser/harness/chromium.ts'
import { openPage } from '#tests/browser/harness/openPage.ts'
import { type OwnEngine, openOwnEngine } from '#tests/browser/harness/ownEngine.ts'
import { settle } from '#tests/browser/screens/screenSteps.ts'

/** What one part of the work took: keys that a person pressed, values that calipers or a scanner sent, and seconds. */
export type WorkPart = { part: string; keys: number; sent: number; seconds: number }

/** What the run came to, by the records of the archive. */
export type WorkDone = {
  parts: WorkPart[]
  planned: number
  glued: number
  labels: number
  broken: string[]
  inOrder: boolean
  /** Texts that a person had to write more than once. */
  writtenTwice: string[]
  problems: string[]
}

const adhesives = ['C1', 'E4', 'F6', 'R2', 'U3', 'V5']
const blocksToBreak = 10

/** A person at the keys, and instruments that type: every key is counted. */
function keyboardOf(page: Page) {
  const written: string[] = []
  const parts: WorkPart[] = []
  let now: WorkPart = { part: '', keys: 0, sent: 0, seconds: 0 }
  const press = async (...keys: string[]) => {
    now.keys += keys.length
    for (const key of keys) await page.keyboard.press(key)
  }
  return {
    parts,
    written,
    press,
    async write(text: string) {
      written.push(text)
      now.keys += text.length
      await page.keyboard.type(text)
    },
    /** Calipers and scanners end what they type with Enter. */
    async send(text: string) {
      now.sent += 1
      await page.keyboard.type(text)
      await page.keyboard.press('Enter')
    },
    /** A scanner types all of a number at once, quicker than a busy machine can be told key by key. */
    async scan(number: string) {
      now.sent += 1
      await page.evaluate(
        (keys) => {
          const place = document.activeElement ?? document.body
          for (const key of keys)
            place.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }))
        },
        [...number, 'Enter'],
      )
    },
    /** Presses Tab until what has the focus fits. */
    async tabTo(fits: { selector?: string; label?: string }) {
      for (let step = 0; step < 200; step++) {
        await press('Tab')
        const is = await page.evaluate(({ selector, label }) => {
          const has = document.activeElement
          const labels = has !== null && 'labels' in has ? [...((has as HTMLInputElement).labels ?? [])] : []
          if (label !== undefined) return labels.some(({ textContent }) => textContent?.trim().startsWith(label))
          return has?.matches(selector ?? '*') === true
        }, fits)
        if (is) return
      }
      throw new Error(`Tab does not reach ${JSON.stringify(fits)}`)
    },
    async during(part: string, work: () => Promise<void>) {
      now = { part, keys: 0, sent: 0, seconds: 0 }
      const began = performance.now()
      await work()
      now.seconds = (performance.now() - began) / 1000
      parts.push(now)
    },
  }
}

type Keyboard = ReturnType<typeof keyboardOf>

const headingIs = (page: Page, name: string | RegExp) => page.getByRole('heading', { name, level: 1 }).waitFor()

async function planStudy(page: Page, { press, write, tabTo }: Keyboard): Promise<void> {
  const each = async (names: readonly string[]) => {
    for (const name of names) {
      await write(name)
      await press('Enter')
    }
  }
  await press('d')
  await headingIs(page, 'Studies')
  await tabTo({ selector: 'main a.button-primary' })
  await press('Enter')
  await headingIs(page, 'Plan a study')
  await write('Which adhesive lasts?')
  await press('Tab', 'Tab')
  await each(adhesives)
  await tabTo({ selector: '.list-field input:not([type="hidden"])' })
  await each(['loft', 'bilge'])
  await tabTo({ selector: '[aria-label="Years to the last age"]' })
  await press('Control+A')
  await write('8')
  await press('Enter')
  await page.locator('.study-total', { hasText: '1728 blocks' }).waitFor()
  await tabTo({ label: 'Overlap length' })
  await write('30')
  await tabTo({ label: 'Overlap width' })
  await write('20')
  await tabTo({ selector: 'main button[type="submit"]' })
  await press('Enter')
  await headingIs(page, 'Which adhesive lasts?')
  await tabTo({ selector: '.record-buttons button' })
  await press('Enter')
  await page.getByRole('dialog').waitFor()
  await press('Enter')
  await page.getByText('1728 blocks: 1728 to glue').waitFor()
}

/** Opens the sheets of the study's labels; how many there are. */
async function makeLabels(page: Page, { press, tabTo }: Keyboard): Promise<number> {
  await tabTo({ selector: 'a[href^="#/labels"]' })
  await press('Enter')
  await headingIs(page, 'Labels')
  await settle(page)
  const made = /([\d\s]+) labels/.exec((await page.locator('main').textContent()) ?? '')
  return Number((made?.[1] ?? '0').replace(/\s/g, ''))
}

async function glueFirstAdhesive(page: Page, keyboard: Keyboard): Promise<void> {
  const { press, write, tabTo, send } = keyboard
  await press('d')
  await headingIs(page, 'Studies')
  await tabTo({ selector: 'main a[href="#/studies/1"], main tr[tabindex="0"]' })
  await press('Enter')
  await headingIs(page, 'Which adhesive lasts?')
  await tabTo({ selector: 'a[href="#/glue-ups/new/1"]' })
  await press('Enter')
  await headingIs(page, 'New glue-up')
  await page.getByLabel('All groups').waitFor()
  for (const exposure of ['loft', 'bilge']) {
    await tabTo({ label: `C1 · ${exposure}` })
    await press('Space')
  }
  await tabTo({ label: 'Temperature' })
  await write('19')
  await tabTo({ label: 'Lot of C1' })
  await write('C1-lot-1')
  await press('Escape')
  await tabTo({ selector: '[data-cell]' })
  const random = createRandom(7)
  const toTwentieth = (mm: number) => String(Math.round(mm * 20) / 20)
  const blocks = await page.locator('.caliper-table tbody th').count()
  for (let block = 0; block < blocks; block++) {
    // One point at the wrong place: the page asks, and the block is measured again
    if (block === 2) await send('302')
    await send(toTwentieth(random.between(29.5, 30.5)))
    await send(toTwentieth(random.between(19.7, 20.3)))
  }
  await page.getByText(`${blocks} of ${blocks} measured`).waitFor()
  await tabTo({ selector: 'main button[type="submit"]' })
  await press('Enter')
  await headingIs(page, /^Glued on/)
}

async function breakTen(page: Page, keyboard: Keyboard, own: OwnEngine): Promise<void> {
  const { press, tabTo, scan } = keyboard
  await press('b')
  await page.waitForSelector('.at-hand')
  await tabTo({ selector: 'a[href="#/breaking"]' })
  await press('Enter')
  await headingIs(page, 'Breaking sessions')
  await tabTo({ selector: 'a[href="#/breaking/new"]' })
  await press('Enter')
  await headingIs(page, 'New breaking session')
  await page.getByLabel(/Pull at once/).waitFor()
  await page.waitForFunction(() => (document.activeElement as HTMLInputElement | null)?.type === 'checkbox')
  await press('Space')
  await tabTo({ selector: 'main button[type="submit"]' })
  await press('Enter')
  await page.getByText('0 of 24 broken').waitFor()
  for (let broken = 1; broken <= blocksToBreak; broken++) {
    const next = (await page.locator('.at-hand-number').textContent()) ?? ''
    // The block that is laid into the press is scanned: it is the one that the screen asks for
    await scan(next)
    await page.waitForFunction(
      () => document.querySelector('.virtual button')?.getAttribute('aria-disabled') === 'false',
    )
    await press('l')
    await page.getByText(`${broken} of 24 broken`).waitFor()
    await page.locator('.last-break').getByText(next).first().waitFor()
    await press('7', '5', 'Enter')
    await page.locator('.last-break').getByText('Saved', { exact: true }).waitFor()
    await page.waitForFunction((was) => document.querySelector('.at-hand-number')?.textContent !== was, next)
  }
  await own.engine.bench.written()
}

/** The work of a programme from its plan to its first breaks, in a real browser, by keyboard, calipers and scanner alone. */
export async function workThrough(): Promise<WorkDone> {
  const own = await openOwnEngine()
  const { handlers } = own.engine
  await handlers['preferences.set']({ cautionsRead: true, operator: 'bench 1' })
  const { page, problems, close } = await openPage({ host: 'loopback', engine: own.engine })
  const keyboard = keyboardOf(page)
  try {
    await page.getByRole('navigation').waitFor()
    await keyboard.during('plan a study, allocate its blocks', () => planStudy(page, keyboard))
    let labels = 0
    await keyboard.during('make labels', async () => {
      labels = await makeLabels(page, keyboard)
    })
    await keyboard.during('glue up 288 blocks with calipers', () => glueFirstAdhesive(page, keyboard))
    await handlers['bench.connect']({
      source: {
        ...{ kind: 'virtual', scenario: 'brittle', rateHz: 80, seed: 1, speed: 20, breaks: null, byItself: false },
      },
    })
    await keyboard.during('break ten blocks from the queue', () => breakTen(page, keyboard, own))
    const { counts } = await handlers['studies.get']({ studyId: 1 })
    const { members } = await handlers['breaking.get']({ breakingSessionId: 1 })
    const broken = members.filter(({ state }) => state === 'broken').map(({ specimen }) => specimen.fields.number)
    return {
      ...{ parts: keyboard.parts, planned: counts.allocated, glued: counts.glued, labels, broken, problems },
      inOrder: members.slice(0, blocksToBreak).every(({ state }) => state === 'broken'),
      writtenTwice: keyboard.written.filter((text, at) => keyboard.written.indexOf(text) !== at),
    }
  } finally {
    await close()
    await own.close()
  }
}

/** Prints what each part of the work took: keys a person pressed, values that instruments sent, seconds. No words follow the name. */
export async function soak(): Promise<boolean> {
  if (chromiumPath === null) {
    console.log('Not run: there is no Chromium. Set CHROMIUM_PATH.')
    return true
  }
  const done = await workThrough()
  for (const { part, keys, sent, seconds } of done.parts)
    console.log(`${part}: ${keys} keys, ${sent} values sent, ${seconds.toFixed(1)} s`)
  const { planned, labels, glued, broken, inOrder, writtenTwice, problems } = done
  const sum = (of: 'keys' | 'sent' | 'seconds') => done.parts.reduce((all, part) => all + part[of], 0)
  console.log(`together: ${sum('keys')} keys, ${sum('sent')} values sent, ${sum('seconds').toFixed(1)} s`)
  console.log(
    `${planned} blocks planned, ${labels} labels, ${glued} glued, ${broken.length} broken in their order: ${inOrder}`,
  )
  console.log(`texts written twice: ${writtenTwice.length === 0 ? 'none' : writtenTwice.join(', ')}`)
  for (const problem of problems) console.log(problem)
  const held =
    planned === 1728 &&
    labels === 1728 &&
    glued === 288 &&
    broken.length === blocksToBreak &&
    inOrder &&
    writtenTwice.length === 0 &&
    problems.length === 0
  console.log(held ? 'held' : 'FAILED')
  return held
}
