import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Handlers } from '#contract/procedures.ts'
import { scriptComparison } from '#tests/fakes/scripted/scriptedComparison.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'
import { chromiumPath } from './harness/chromium.ts'
import { type OpenedPage, openPage } from './harness/openPage.ts'
import { at } from './screens/screenSteps.ts'

/** An override of the direction of writing, a joiner without width, the bell. */
const hidden = '\u202e\u200b\u0007'

/** Texts of people, files and devices, by the names that the contract gives them. */
const free = new Set([
  ...['number', 'adhesive', 'jointType', 'exposure', 'note', 'notes', 'lot', 'place', 'setAside', 'by', 'reason'],
  ...['name', 'source', 'label', 'path', 'manufacturer', 'serialNumber', 'operator', 'weight', 'rejectedExample'],
])

/** The same answer with something hidden in every such text. */
function hide(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value
  if (Array.isArray(value)) return value.map(hide)
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => {
      if (key === 'lineFormat') return [key, part]
      return [key, typeof part === 'string' && part !== '' && free.has(key) ? `${part}${hidden}` : hide(part)]
    }),
  )
}

const addresses = [
  ...['bench', 'connect', 'specimens', 'specimens/1', 'breaks', 'breaks/1', 'compare/1,2', 'reevaluations'],
  ...['calibration', 'calibration/weights', 'archive', 'settings'],
]

describe.skipIf(chromiumPath === null)('what cannot be seen in a text', () => {
  let opened: OpenedPage
  beforeAll(async () => {
    const host = createScriptedHost()
    for (let i = 1; i <= 3; i++) host.addBreak(4000 + 100 * i, { note: 'from a file' })
    const { handlers, ...engine } = scriptComparison(host)
    const hiding = Object.fromEntries(
      Object.entries(handlers).map(([name, answer]) => [
        name,
        async (input: never) => hide(await (answer as (input: never) => Promise<unknown>)(input)),
      ]),
    ) as unknown as Handlers
    opened = await openPage({ host: 'loopback', engine: { ...engine, handlers: hiding } })
  })
  afterAll(async () => opened?.close())

  it.each(addresses)('stands as its number on the page %s, in words and in what is read out', async (address) => {
    const { page } = opened
    await at(`#/${address}`)(page)
    const found = await page.evaluate(() => {
      const unseen = /(?![\n\t])[\p{Cc}\p{Cf}]/u
      const shown = document.body.cloneNode(true) as HTMLElement
      // What is typed stays as it is
      for (const field of shown.querySelectorAll('textarea')) field.remove()
      const texts = [shown.textContent]
      for (const element of document.querySelectorAll('body *'))
        for (const { name, value } of element.attributes)
          if (name === 'title' || name.startsWith('aria-')) texts.push(value)
      return {
        marked: shown.textContent.includes('<U+200B>'),
        unseen: texts.filter((text) => unseen.test(text)),
      }
    })
    expect(found).toEqual({ marked: true, unseen: [] })
  })

  it('reported no error on the way', () => expect(opened.problems).toEqual([]))
})
