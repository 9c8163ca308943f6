import type { Figure } from './figure.ts'
import type { Mark } from './mark.ts'
import { wrappedText } from './textWidth.ts'

const lineEm = 1.35
/** Around the whole, in heights of the text. */
const edgeEm = 1

/** A figure to be handed on by itself: on white, its title above it, and below it where it comes from. */
export function figurePage(figure: Figure, origin: readonly string[]): Figure {
  const { emPx: em, marks } = figure
  const edge = edgeEm * em
  const titles = wrappedText(figure.title, figure.widthPx, em)
  const sources = origin.flatMap((line) => wrappedText(line, figure.widthPx, em))
  const top = edge + (lineEm * titles.length + 0.6) * em
  const under = top + figure.heightPx + 0.4 * em
  const widthPx = figure.widthPx + 2 * edge
  const heightPx = under + lineEm * sources.length * em + edge
  const written = (lines: readonly string[], from: number, ink: 'heading' | 'title'): Mark[] =>
    lines.map((text, line) => ({
      ...{ kind: 'text', ink, x: edge, y: from + (1 + lineEm * line) * em, text, anchor: 'start' },
    }))
  return {
    ...figure,
    widthPx,
    heightPx,
    description: [figure.description, ...origin].join(' '),
    marks: [
      { kind: 'band', ink: 'sheet', x: 0, y: 0, width: widthPx, height: heightPx },
      ...written(titles, edge, 'heading'),
      { kind: 'moved', by: { x: edge, y: top }, marks },
      ...written(sources, under, 'title'),
    ],
    readings: figure.readings.map((reading) => ({ ...reading, x: reading.x + edge, y: reading.y + top })),
  }
}
