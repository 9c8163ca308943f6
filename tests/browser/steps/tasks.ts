import type { Page } from 'playwright-core'
import { startCommand } from '#tests/fakes/commandProcess.ts'
import { cautionsGone, readCautions } from '../harness/readCautions.ts'
import type { Hands } from './hands.ts'

/** Something that a person wants to get done, from the first page on. */
export type Task = {
  name: string
  /** How the program is started. */
  words: readonly string[]
  /** Not counted: what was done before. */
  before?(page: Page): Promise<void>
  run(page: Page, hands: Hands): Promise<void>
}

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { name, level: 1 }).waitFor()
const saved = (page: Page) => page.getByText('Saved', { exact: true }).waitFor()

/** Describes the break that just happened. */
async function assess(page: Page, hands: Hands, percent: string): Promise<void> {
  await page.locator('.last-break:not(.last-break-empty)').waitFor()
  if (hands.kind === 'keyboard') {
    await hands.type(percent)
    await hands.key('Enter')
  } else {
    const scale = (await page.locator('.wood-failure [role=slider]').boundingBox())!
    await hands.clickAt(scale.x + (scale.width * Number(percent)) / 100, scale.y + scale.height / 2)
    await hands.choose('Save')
  }
  await saved(page)
}

const firstBreak: Task = {
  name: 'first break in the demo',
  words: ['serve', '--demo'],
  async run(page, hands) {
    await hands.choose('I have read this')
    await cautionsGone(page)
    await heading(page, 'Waiting for load')
    await hands.press('l', 'Load the specimen')
    await heading(page, /^Broke at/)
    await assess(page, hands, '75')
  },
}

const blocks = ['B-1', 'B-2', 'B-3', 'B-4', 'B-5']

const ownArchive: Task = {
  name: 'own archive from nothing to five breaks, overlaps in fractions of an inch',
  words: ['serve'],
  async run(page, hands) {
    await heading(page, 'Connect an amplifier')
    await hands.press('u', 'US')
    await hands.press('s', 'Specimens')
    await hands.choose('Add')
    await heading(page, 'Add a specimen')
    for (const [index, number] of blocks.entries()) {
      if (index === 0) {
        await hands.fill('Specimen number', number)
        await hands.fill('Adhesive', 'casein C1')
        await hands.fill('Overlap length', '1 3/16')
        await hands.fill('Overlap width', '3/4')
      }
      const isLast = index === blocks.length - 1
      await (isLast ? hands.press('Enter', /^Add$/) : hands.press('Control+Enter', 'Add, and another'))
      await (isLast ? heading(page, number) : page.getByText(`${number} added.`).waitFor())
    }
    await hands.press('b', 'Bench')
    await hands.choose('Connect')
    await heading(page, 'Connect an amplifier')
    await hands.choose(/Connect my load cell/)
    const amplifier = startCommand(['emulate', '--scenario', 'brittle', '--speed', '4'])
    try {
      await hands.fill('Path', String((await amplifier.until(({ path }) => path !== undefined)).path))
      await hands.choose('Listen')
      await page
        .getByText(/of the lines fit/)
        .first()
        .waitFor()
      await hands.fill('Rated load', '5000')
      await hands.fill('Scale', '0.00225')
      await hands.choose(/^Connect$/)
      await hands.choose('I have read this')
      await cautionsGone(page)
      for (const number of blocks) {
        await page.locator('.last-break-number', { hasText: number }).waitFor()
        await assess(page, hands, '75')
      }
    } finally {
      amplifier.child.kill('SIGINT')
      await amplifier.ended
    }
  },
}

const wrongPeak: Task = {
  name: 'correct a wrong peak',
  words: ['serve', '--demo'],
  async before(page) {
    await readCautions(page)
    await heading(page, 'Waiting for load')
  },
  async run(page, hands) {
    await hands.press('k', 'Breaks')
    await heading(page, 'Breaks')
    await hands.press('/', /^Search/)
    await hands.type('resorcinol')
    await page.waitForFunction(() => {
      const rows = [...document.querySelectorAll('tr[data-index]')]
      return rows.length > 0 && rows.every(({ textContent }) => textContent?.includes('resorcinol'))
    })
    const first = page.locator('tr[data-index] strong').first()
    const number = (await first.textContent())!
    if (hands.kind === 'keyboard') await hands.key('ArrowDown', 'Enter')
    else {
      const box = (await first.boundingBox())!
      await hands.clickAt(box.x + 0.5 * box.width, box.y + 0.5 * box.height)
    }
    await heading(page, new RegExp(`^${number} broke`))
    const plot = page.locator('.recorded-curve .u-over').first()
    await plot.waitFor()
    if (hands.kind === 'mouse') {
      const box = (await plot.boundingBox())!
      await hands.clickAt(box.x + 0.6 * box.width, box.y + 0.5 * box.height)
      await hands.choose(/^Take this sample/)
    } else {
      await hands.key('c', 'Shift+ArrowLeft', 'Shift+ArrowLeft', 'p')
    }
    await hands.fill('Name or initials', 'Ada')
    await hands.fill('Reason', 'the frame was leant on')
    await hands.choose('Take this sample')
    await page
      .getByText(/picked by hand/)
      .first()
      .waitFor()
  },
}

export const tasks: readonly Task[] = [firstBreak, ownArchive, wrongPeak]
