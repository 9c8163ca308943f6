import { describe, expect, it } from 'vitest'
import type { Figure } from '#figures/drawing/figure.ts'
import { readingNear, readOutMarks } from '#figures/drawing/readOut.ts'

const words = 'Reading 12, run 2 going down, 3400.00 N: +0.12 N'
const figureWith = (x: number, y: number): Figure => ({
  ...{ widthPx: 300, heightPx: 150, emPx: 12, title: '', description: '', marks: [] },
  readings: [{ x, y, words }],
})
const plate = (x: number, y: number) =>
  readOutMarks(figureWith(x, y), 0).flatMap((mark) => (mark.kind === 'band' ? [mark] : []))[0]!

describe('readOutMarks', () => {
  it.each([
    [5, 5],
    [295, 5],
    [5, 145],
    [295, 145],
    [150, 75],
  ])('keeps the words of a point at %i, %i within the figure and off the point', (x, y) => {
    const box = plate(x, y)
    expect(box.x).toBeGreaterThanOrEqual(0)
    expect(box.y).toBeGreaterThanOrEqual(0)
    expect(box.x + box.width).toBeLessThanOrEqual(300)
    expect(box.y + box.height).toBeLessThanOrEqual(150)
    expect(y < box.y || y > box.y + box.height).toBe(true)
  })
  it('draws nothing for a point that is no longer there', () => {
    expect(readOutMarks(figureWith(1, 1), 7)).toEqual([])
  })
})

describe('readingNear', () => {
  const figure = { readings: [0, 10, 20].map((x) => ({ x, y: 0, words: '' })) }
  it('finds the nearest point within the distance', () => {
    expect(readingNear(figure, 12, 3, 10)).toBe(1)
    expect(readingNear(figure, 19, 0, 10)).toBe(2)
  })
  it('finds none farther away', () => {
    expect(readingNear(figure, 40, 0, 10)).toBeNull()
  })
})
