import { expect, it } from 'vitest'
import { fittedLines } from '#exchange/labels/fittedLines.ts'

const em = { leastMm: 1, mostMm: 3 }

it('keeps the largest letters where the text fits one line', () => {
  expect(fittedLines('C1 loft', { widthMm: 20, heightMm: 4 }, em)).toEqual({ lines: ['C1 loft'], emMm: 3 })
})

it('breaks at blanks and makes letters smaller until all is there', () => {
  const text = 'casein C1, long grain to long grain, tight joint, loft, 12 months'
  const { lines, emMm } = fittedLines(text, { widthMm: 20, heightMm: 8 }, em)
  expect(lines.join(' ')).toBe(text)
  expect(emMm).toBeLessThan(3)
  expect(lines.every((line) => line.length * 0.6 * emMm <= 20)).toBe(true)
  expect(lines.length * 1.2 * emMm).toBeLessThanOrEqual(8)
})

it('ends with an ellipsis what has no room in the smallest letters', () => {
  const { lines, emMm } = fittedLines('word '.repeat(100), { widthMm: 20, heightMm: 4 }, em)
  expect(emMm).toBe(1)
  expect(lines).toHaveLength(3)
  expect(lines.at(-1)).toMatch(/…$/)
  expect(lines.at(-1)!.length).toBeLessThanOrEqual(33)
})

it('cuts a word that no line can hold', () => {
  const { lines } = fittedLines('x'.repeat(50), { widthMm: 12, heightMm: 8 }, em)
  expect(lines.join('')).toBe('x'.repeat(50))
})

it('has no lines for no text', () => {
  expect(fittedLines('  ', { widthMm: 20, heightMm: 4 }, em).lines).toEqual([])
})
