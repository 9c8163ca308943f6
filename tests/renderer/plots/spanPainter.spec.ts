import { describe, expect, it } from 'vitest'
import { createColumnSpans } from '#renderer/plots/columnSpans.ts'
import { type Pixels, paintSpans, readHexColour, tintBetween } from '#renderer/plots/spanPainter.ts'

const blank = (columns = 8, rows = 10): Pixels => ({ words: new Uint32Array(columns * rows), columns, rows })
const level = (y: number, columns = 8) => {
  const spans = createColumnSpans(columns)
  spans.top.fill(y)
  spans.bottom.fill(y)
  return spans
}
const red = { red: 200, green: 0, blue: 0 }
const pen = { ...red, width: 2, dash: null }
/** As the canvas reads it. */
const at = ({ words, columns }: Pixels, column: number, row: number) => [
  ...new Uint8ClampedArray(words.buffer, 4 * (row * columns + column), 4),
]

describe('paintSpans', () => {
  it('fills whole pixels with the colour, and none beside them', () => {
    const pixels = blank()
    paintSpans(pixels, level(5), pen)
    expect([3, 4, 5, 6].map((row) => at(pixels, 2, row)[3])).toEqual([0, 255, 255, 0])
    expect(at(pixels, 2, 4)).toEqual([200, 0, 0, 255])
  })

  it('softens an edge by the part of the pixel that it covers', () => {
    const pixels = blank()
    paintSpans(pixels, level(5.25), pen)
    expect([4, 5, 6].map((row) => at(pixels, 2, row)[3])).toEqual([191, 255, 64])
  })

  it('mixes a soft edge with what is there already', () => {
    const pixels = blank()
    paintSpans(pixels, level(5), { ...pen, red: 0, blue: 200 })
    paintSpans(pixels, level(5.5), pen)
    expect(at(pixels, 2, 4)).toEqual([100, 0, 100, 255])
  })

  it('covers the whole height of a fall within one column', () => {
    const pixels = blank()
    const spans = createColumnSpans(8)
    spans.top.fill(Number.NaN)
    spans.bottom.fill(Number.NaN)
    spans.top[3] = 1
    spans.bottom[3] = 8
    paintSpans(pixels, spans, { ...pen, width: 1 })
    expect([1, 4, 7].map((row) => at(pixels, 3, row)[3])).toEqual([255, 255, 255])
    expect(at(pixels, 2, 4)[3]).toBe(0)
  })

  it('stays inside the picture', () => {
    const pixels = blank()
    const spans = level(-50)
    spans.bottom.fill(60)
    paintSpans(pixels, spans, { ...pen, width: 5 })
    expect(pixels.words.every((word) => word >>> 24 === 255)).toBe(true)
  })

  it('leaves gaps in a dashed line', () => {
    const pixels = blank(60, 4)
    paintSpans(pixels, level(2, 60), { ...pen, width: 1, dash: { on: 6, off: 4 } })
    const drawn = Array.from({ length: 20 }, (_, column) => (at(pixels, column, 2)[3]! > 0 ? '-' : ' ')).join('')
    expect(drawn).toContain('    ------    ')
    expect(drawn.replaceAll(' ', '')).toHaveLength(12)
  })

  it('leaves gaps in a dashed line that falls', () => {
    const pixels = blank(3, 60)
    const spans = createColumnSpans(3)
    spans.top.set([Number.NaN, 0, Number.NaN])
    spans.bottom.set([Number.NaN, 60, Number.NaN])
    paintSpans(pixels, spans, { ...pen, width: 1, dash: { on: 6, off: 4 } })
    const opacities = Array.from({ length: 60 }, (_, row) => at(pixels, 1, row)[3]!)
    expect(opacities.filter((opacity) => opacity > 0)).toHaveLength(36)
  })
})

describe('tintBetween', () => {
  it('tints what lies between two lines and shows what is below', () => {
    const pixels = blank()
    tintBetween(pixels, level(2), level(7), red, 0.5)
    expect([1, 2, 7, 8].map((row) => at(pixels, 4, row)[3])).toEqual([0, 128, 128, 0])
  })
})

describe('readHexColour', () => {
  it('reads a colour of the theme', () => expect(readHexColour('#0e5a61')).toEqual({ red: 14, green: 90, blue: 97 }))
  it.each(['', '#fff', 'teal'])('refuses %j', (text) => expect(() => readHexColour(text)).toThrow(RangeError))
})
