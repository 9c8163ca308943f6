import { line as lineThrough } from 'd3-shape'
import { escapeText } from './escapeText.ts'
import type { Figure } from './figure.ts'
import { figureSheet, inkAttributes } from './ink.ts'
import type { At, Ink, Mark } from './mark.ts'

/** A figure as SVG text, coloured by whoever shows it. All words in it are escaped. */
export function svgText(figure: Figure): string {
  return written(figure, '')
}

/** The same as a file of its own, which brings its colours along. */
export function svgFile(figure: Figure): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${written(figure, `<style>${figureSheet}</style>`)}\n`
}

/** Marks alone, to be laid over a figure. */
export function marksText(marks: readonly Mark[]): string {
  return marks.map(markText).join('')
}

function written({ widthPx, heightPx, emPx, title, description, marks }: Figure, sheet: string): string {
  const attributes = {
    xmlns: 'http://www.w3.org/2000/svg',
    class: 'figure',
    role: 'img',
    viewBox: `0 0 ${rounded(widthPx)} ${rounded(heightPx)}`,
    width: rounded(widthPx),
    height: rounded(heightPx),
    'font-size': rounded(emPx),
  }
  const words = element('title', {}, escapeText(title)) + element('desc', {}, escapeText(description))
  return element('svg', attributes, `${words}${sheet}${marksText(marks)}`)
}

function markText(mark: Mark): string {
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
    case 'named':
      return element('g', {}, element('title', {}, escapeText(mark.words)) + marksText(mark.marks))
  }
}

function drawn(name: string, ink: Ink, attributes: Record<string, string | number>, content = ''): string {
  return element(name, { class: `ink-${ink}`, ...inkAttributes(ink), ...attributes }, content)
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
