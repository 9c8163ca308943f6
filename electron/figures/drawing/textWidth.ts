import { visibleText } from '#words/visibleText.ts'

/** Widths in heights of the text, at least as wide as the letters are in the usual sans-serif types. */
const widths: readonly [RegExp, number][] = [
  [/[\u2009\u200a\u202f]/, 0.22],
  [/[ ijl.,:;'’!|\u00a0]/, 0.3],
  [/[-ftrI()[\]/\\"“”]/, 0.4],
  [/[a-zµ]/, 0.58],
  [/[0-9+−–²³±<>=_]/, 0.6],
  [/[A-Z&]/, 0.79],
]

const widest = /[mwMW%@…—]/
const full = 1.02

/**
 * How wide a text is at most, in pixels; there is no letter to measure where a figure is written, so it is a little too wide
 * rather than cut. A character of an unknown script counts as a full square,
 * one that cannot be seen as the number that is written for it.
 */
export function textWidth(text: string, emPx: number): number {
  let ems = 0
  for (const character of visibleText(text))
    ems += widest.test(character) ? full : (widths.find(([those]) => those.test(character))?.[1] ?? full)
  return ems * emPx
}

/** Where a line may end: at a space, but not at one that holds a number and its unit together. */
const mayBreak = /[ \t\r\n]+/

/** Words in lines no wider than asked; a single word that is wider is parted. At least one line. */
export function wrappedText(text: string, widthPx: number, emPx: number): string[] {
  const lines: string[] = []
  let line = ''
  const fits = (candidate: string) => textWidth(candidate, emPx) <= widthPx
  for (const word of text.split(mayBreak)) {
    const longer = line === '' ? word : `${line} ${word}`
    if (fits(longer)) {
      line = longer
      continue
    }
    if (line !== '') lines.push(line)
    line = ''
    for (const character of word) {
      if (line !== '' && !fits(line + character)) {
        lines.push(line)
        line = ''
      }
      line += character
    }
  }
  return line === '' && lines.length > 0 ? lines : [...lines, line]
}
