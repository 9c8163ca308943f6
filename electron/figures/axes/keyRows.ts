import type { At, Mark } from '../drawing/mark.ts'
import { textWidth, wrappedText } from '../drawing/textWidth.ts'

/** What a form in a figure stands for. */
export type Key = {
  name: string
  /** Draws the form about a place; null: words alone. */
  sign: ((at: At) => Mark[]) | null
}

const signEm = 1.4
const lineEm = 1.6

/** Keys side by side from the left, in as many lines as they need, below `top`; with the height that they take, pixels. */
export function keyRows(keys: readonly Key[], top: number, widthPx: number, em: number): [number, Mark[]] {
  if (keys.length === 0) return [0, []]
  const marks: Mark[] = []
  let x = 0
  let line = 0
  for (const { name, sign } of keys) {
    const indent = sign === null ? 0 : signEm * em
    const lines = wrappedText(name, widthPx - indent, em)
    const width = indent + Math.max(...lines.map((text) => textWidth(text, em)))
    if (x > 0 && x + width > widthPx) {
      x = 0
      line += 1
    }
    const baseline = () => top + (1.1 + lineEm * line) * em
    if (sign !== null) marks.push(...sign({ x: x + 0.5 * em, y: baseline() - 0.35 * em }))
    for (const [index, text] of lines.entries()) {
      if (index > 0) line += 1
      marks.push({ kind: 'text', ink: 'title', x: x + indent, y: baseline(), text, anchor: 'start' })
    }
    x += width + 1.2 * em
  }
  return [(0.4 + lineEm * (line + 1)) * em, marks]
}
