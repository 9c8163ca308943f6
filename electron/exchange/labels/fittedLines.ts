/** Widths of characters in em that no usual typeface without serifs exceeds on the average of a line. */
export const digitEm = 0.7
const letterEm = 0.6
/** From one line of text to the next, in heights of its letters. */
export const lineStep = 1.2

/** Text that fits a place: its lines and the height of its letters in mm. */
export type FittedLines = { lines: string[]; emMm: number }

/**
 * Breaks a text at its blanks so that it fits a place of that size in mm: in letters as large as they can be, and no smaller than
 * the least; what has no room then ends with an ellipsis.
 */
export function fittedLines(
  text: string,
  place: { widthMm: number; heightMm: number },
  em: { leastMm: number; mostMm: number },
): FittedLines {
  for (let emMm = em.mostMm; ; emMm = Math.max(em.leastMm, emMm - 0.1)) {
    const room = Math.max(1, Math.floor(place.widthMm / (letterEm * emMm)))
    const most = Math.max(1, Math.floor(place.heightMm / (lineStep * emMm)))
    const lines = brokenAtBlanks(text, room)
    if (lines.length <= most) return { lines, emMm }
    if (emMm > em.leastMm) continue
    const last = lines[most - 1]!
    return { lines: [...lines.slice(0, most - 1), `${last.slice(0, room - 1).trimEnd()}…`], emMm }
  }
}

/** A word longer than a line is cut where the line ends. */
function brokenAtBlanks(text: string, room: number): string[] {
  const lines: string[] = []
  for (const word of text.split(/\s+/u).filter((part) => part !== '')) {
    const characters = [...word]
    const last = lines.at(-1)
    if (last !== undefined && [...last].length + 1 + characters.length <= room) {
      lines[lines.length - 1] = `${last} ${word}`
      continue
    }
    for (let at = 0; at < characters.length; at += room) lines.push(characters.slice(at, at + room).join(''))
  }
  return lines
}
