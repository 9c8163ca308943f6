import { describe, expect, it } from 'vitest'
import { textWidth, wrappedText } from '#figures/drawing/textWidth.ts'

// Widths of Helvetica in thousandths of its height. Source: Adobe, Core 14 AFM files, Helvetica.afm.
const helvetica = {
  i: 222,
  m: 833,
  W: 944,
  A: 667,
  '0': 556,
  '@': 1015,
  ' ': 278,
  w: 722,
  t: 278,
  '%': 889,
  Q: 778,
  '+': 584,
}

describe('textWidth', () => {
  it.each(Object.entries(helvetica))('is no narrower than "%s" is', (character, thousandths) => {
    expect(textWidth(character, 1000)).toBeGreaterThanOrEqual(thousandths)
    expect(textWidth(character, 1000)).toBeLessThan(thousandths * 1.6)
  })
  it('counts a character outside the first planes once', () => {
    expect(textWidth('😀', 10)).toBe(textWidth('漢', 10))
  })
})

describe('wrappedText', () => {
  const text = 'residual, N: force by the curve minus force applied'
  it('loses no word and keeps every line within the width', () => {
    const lines = wrappedText(text, 100, 10)
    expect(lines.join(' ')).toBe(text)
    for (const line of lines) expect(textWidth(line, 10)).toBeLessThanOrEqual(100)
  })
  it('parts a word that is wider than the line', () => {
    const lines = wrappedText(`a ${'M'.repeat(25)}`, 100, 10)
    expect(lines.join('').replace('a', '')).toBe('M'.repeat(25))
    for (const line of lines) expect(textWidth(line, 10)).toBeLessThanOrEqual(103)
  })
  it('keeps a number and its unit in one line', () => {
    expect(wrappedText('mean of 7.98\u00a0MPa', 75, 10)).toEqual(['mean of', '7.98\u00a0MPa'])
  })
  it('gives one empty line for no text', () => {
    expect(wrappedText('', 100, 10)).toEqual([''])
  })
})
