import type { Figure } from './figure.ts'
import type { Mark } from './mark.ts'
import { textWidth, wrappedText } from './textWidth.ts'

const lineEm = 1.3

/** A ring about one point that can be read and its words beside it, within the figure and off the point; none: nothing. */
export function readOutMarks(figure: Figure, index: number): Mark[] {
  const reading = figure.readings[index]
  if (reading === undefined) return []
  const { widthPx, heightPx, emPx: em } = figure
  const lines = wrappedText(reading.words, widthPx - 2 * em, em)
  const width = Math.max(...lines.map((line) => textWidth(line, em))) + em
  const height = (lineEm * lines.length + 0.6) * em
  const off = 1.2 * em
  const x = Math.min(Math.max(reading.x - width / 2, 1), widthPx - width - 1)
  const above = reading.y - off - height
  const y = above >= 1 ? above : Math.min(reading.y + off, heightPx - height - 1)
  return [
    { kind: 'circle', ink: 'chosen', x: reading.x, y: reading.y, r: 0.75 * em },
    { kind: 'band', ink: 'plate', x, y, width, height },
    ...lines.map((text, line): Mark => {
      const baseline = y + (1.2 + lineEm * line) * em
      return { kind: 'text', ink: 'title', x: x + 0.5 * em, y: baseline, text, anchor: 'start' }
    }),
  ]
}

/** Index of the point that can be read nearest to a place, not farther than `withinPx`; null: none is. */
export function readingNear(figure: Pick<Figure, 'readings'>, x: number, y: number, withinPx: number): number | null {
  let nearest: number | null = null
  let least = withinPx
  for (const [index, reading] of figure.readings.entries()) {
    const distance = Math.hypot(reading.x - x, reading.y - y)
    if (distance > least) continue
    nearest = index
    least = distance
  }
  return nearest
}
