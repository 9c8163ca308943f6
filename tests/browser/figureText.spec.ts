import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { figureSheet } from '#figures/drawing/ink.ts'
import { svgFile, svgText } from '#figures/drawing/svgText.ts'
import { madeFigures } from '#tests/figures/madeFigures.ts'
import { visibleText } from '#words/visibleText.ts'
import { chromiumPath, type OpenBrowser, openBrowser } from './harness/chromium.ts'

const hostile =
  '</title></svg><script>document.title = "hit"</script><img src=x onerror=alert(1)> & "a" \'b\' \u0000\ud800'
const plain = 'Saltmarsh Boatyard School'
const typeface = readFileSync(
  createRequire(import.meta.url).resolve('@fontsource-variable/roboto/files/roboto-latin-wght-normal.woff2'),
).toString('base64')
const sizes = [
  { widthPx: 300, emPx: 12.5 },
  { widthPx: 560, emPx: 15 },
  { widthPx: 1180, emPx: 12.5 },
]

/** What an XML parser makes of a text: the trouble it had, and what stands in it. */
function parsed(page: Page, text: string) {
  return page.evaluate((source) => {
    const { documentElement: root } = new DOMParser().parseFromString(source, 'image/svg+xml')
    return {
      trouble: root.querySelector('parsererror')?.textContent ?? null,
      root: root.localName,
      title: root.querySelector(':scope > title')?.textContent ?? '',
      elements: [...new Set([...root.querySelectorAll('*')].map(({ localName }) => localName))].sort(),
      styled: root.querySelectorAll('[style]').length,
    }
  }, text)
}

type Found = { outside: string[]; overlapping: string[]; texts: number }

/** What reaches out of the figure, and which texts meet, by what Chromium draws. */
function laidOut(page: Page, text: string): Promise<Found> {
  return page.evaluate((source) => {
    document.body.innerHTML = source
    const svg = document.querySelector('svg')!
    const { width, height } = svg.viewBox.baseVal
    const name = (element: SVGGraphicsElement) => `${element.getAttribute('class')} "${element.textContent}"`
    const drawn = [...svg.querySelectorAll<SVGGraphicsElement>('path, rect, circle, text')]
    const boxOf = (element: SVGGraphicsElement): DOMRect => {
      const box = element.getBBox()
      for (let around = element.parentElement; around instanceof SVGGElement; around = around.parentElement) {
        const moved = around.transform.baseVal.consolidate()?.matrix
        box.x += moved?.e ?? 0
        box.y += moved?.f ?? 0
      }
      return box
    }
    const boxes = drawn.map((element) => ({ element, box: boxOf(element) }))
    // A box is rounded outwards to whole pixels
    const outside = boxes
      .filter(({ box }) => box.x < -1 || box.y < -1 || box.x + box.width > width + 1 || box.y + box.height > height + 1)
      .map(({ element }) => name(element))
    const texts = boxes.filter(({ element }) => element.localName === 'text')
    const overlapping = texts.flatMap(({ element, box }, index) =>
      texts
        .slice(index + 1)
        .filter(
          ({ box: other }) =>
            box.x < other.x + other.width &&
            other.x < box.x + box.width &&
            // Lines of text may touch: the box of a letter is higher than the letter
            box.y + 3 < other.y + other.height &&
            other.y + 3 < box.y + box.height,
        )
        .map((other) => `${name(element)} and ${name(other.element)}`),
    )
    return { outside, overlapping, texts: texts.length }
  }, text)
}

describe.skipIf(chromiumPath === null)('the text of a figure', async () => {
  const figures = await madeFigures(plain)
  const hostileFigures = await madeFigures(hostile)
  let browser: OpenBrowser
  let page: Page
  beforeAll(async () => {
    browser = await openBrowser()
    page = await browser.context.newPage()
    const face = `@font-face { font-family: Roboto; src: url("data:font/woff2;base64,${typeface}") }`
    await page.setContent(`<style>${face} ${figureSheet}</style><body></body>`)
    await page.evaluate(() => Promise.all([...document.fonts].map((loaded) => loaded.load())))
  })
  afterAll(async () => browser?.close())

  it.each(figures)('cuts no text of $name off, lets no two meet and draws nothing outside', async ({ draw }) => {
    for (const size of sizes) {
      const found = await laidOut(page, svgText(draw(size)))
      expect(found.texts).toBeGreaterThan(0)
      expect({ size, outside: found.outside, overlapping: found.overlapping }).toEqual({
        size,
        outside: [],
        overlapping: [],
      })
    }
  })

  it.each(hostileFigures)('is well-formed whatever a person wrote: $name', async ({ draw }) => {
    const figure = draw(sizes[1]!)
    for (const text of [svgText(figure), svgFile(figure)]) {
      const { trouble, root, title, elements, styled } = await parsed(page, text)
      expect({ trouble, root, styled }).toEqual({ trouble: null, root: 'svg', styled: 0 })
      expect(title).toBe(visibleText(figure.title))
      const known = ['circle', 'desc', 'g', 'path', 'rect', 'style', 'text', 'title']
      expect(elements.filter((element) => !known.includes(element))).toEqual([])
    }
    const found = await laidOut(page, svgText(figure))
    expect(found.outside).toEqual([])
    expect(await page.title()).toBe('')
  })
})
