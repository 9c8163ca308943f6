import { line as lineThrough } from 'd3-shape'
import { escapeText } from './escapeText.ts'
import type { Figure } from './figure.ts'
import { figureTypefaces, inkAttributes, paperColours } from './ink.ts'
import type { At, Ink, Mark } from './mark.ts'

/** Attributes that a mark has by its ink. */
type Look = (ink: Ink) => Readonly<Record<string, string | number>>

/** On a page the class alone says the colour. */
const onPage: Look = (ink) => ({ class: `ink-${ink}`, ...inkAttributes(ink) })
const onPaper: Look = (ink) => ({ ...inkAttributes(ink), ...paperColours(ink) })

/** A figure as SVG text, coloured by whoever shows it. All words in it are escaped. */
export function svgText(figure: Figure): string {
  return written(figure, onPage, {}, '')
}

/**
 * The same as a file of its own, which brings its colours along, and what `sheet` says: its typefaces, as `@font-face` rules.
 */
export function svgFile(figure: Figure, sheet = ''): string {
  const style = sheet === '' ? '' : `<style>${sheet}</style>`
  return `<?xml version="1.0" encoding="UTF-8"?>\n${written(figure, onPaper, { 'font-family': figureTypefaces }, style)}\n`
}

/** Marks alone, to be laid over a figure. */
export function marksText(marks: readonly Mark[]): string {
  return lookedText(marks, onPage)
}

function lookedText(marks: readonly Mark[], look: Look): string {
  return marks.map((mark) => markText(mark, look)).join('')
}

function written(
  { widthPx, heightPx, emPx, title, description, marks }: Figure,
  look: Look,
  more: Record<string, string>,
  sheet: string,
): string {
  const attributes = {
    xmlns: 'http://www.w3.org/2000/svg',
    class: 'figure',
    role: 'img',
    viewBox: `0 0 ${rounded(widthPx)} ${rounded(heightPx)}`,
    width: rounded(widthPx),
    height: rounded(heightPx),
    'font-size': rounded(emPx),
    ...more,
  }
  const words = element('title', {}, escapeText(title)) + element('desc', {}, escapeText(description))
  return element('svg', attributes, `${words}${sheet}${lookedText(marks, look)}`)
}

function markText(mark: Mark, look: Look): string {
  const drawn = (name: string, ink: Ink, attributes: Record<string, string | number>, content = '') =>
    element(name, { ...look(ink), ...attributes }, content)
  switch (mark.kind) {
    case 'line':
      return drawn('path', mark.ink, { d: pathThrough(mark.through) })
    case 'path':
      return drawn('path', mark.ink, { d: mark.d })
    case 'circle':
      return drawn('circle', mark.ink, { cx: rounded(mark.x), cy: rounded(mark.y), r: rounded(mark.r) })
    case 'rule': {
      const { from, to } = mark
      return drawn('path', mark.ink, { d: `M${rounded(from.x)} ${rounded(from.y)}L${rounded(to.x)} ${rounded(to.y)}` })
    }
    case 'band': {
      const { x, y, width, height } = mark
      return drawn('rect', mark.ink, { x: rounded(x), y: rounded(y), width: rounded(width), height: rounded(height) })
    }
    case 'text': {
      const place = { x: rounded(mark.x), y: rounded(mark.y), 'text-anchor': mark.anchor }
      return drawn('text', mark.ink, place, escapeText(mark.text))
    }
    case 'moved': {
      const transform = `translate(${rounded(mark.by.x)} ${rounded(mark.by.y)})`
      return element('g', { transform }, lookedText(mark.marks, look))
    }
    case 'named':
      return element('g', {}, element('title', {}, escapeText(mark.words)) + lookedText(mark.marks, look))
  }
}

function element(name: string, attributes: Record<string, string | number>, content: string): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${escapeText(String(value))}"`)
  return `<${name}${written.join('')}${content === '' ? '/>' : `>${content}</${name}>`}`
}

const drawPath = lineThrough<At>()
  .defined(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))
  .x(({ x }) => x)
  .y(({ y }) => y)
  .digits(2)

function pathThrough(points: readonly At[]): string {
  return drawPath([...points]) ?? ''
}

/** A hundredth of a pixel is finer than any screen. Throws RangeError for what is not finite: it would draw nothing. */
function rounded(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError('svgText requires finite places')
  return Math.round(value * 100) / 100
}
