import { describe, expect, it } from 'vitest'
import { namedAxis, valueAxis } from '#figures/axes/axis.ts'
import { framed, strideOf } from '#figures/axes/frame.ts'
import { textWidth } from '#figures/drawing/textWidth.ts'

const size = { widthPx: 320, emPx: 12 }
const parts = (change = {}) => ({
  ...{ x: valueAxis([0, 500]), y: valueAxis([0, 12]), xTitle: 'force, N', yTitle: 'residual, N', heightEm: 18 },
  ...change,
})

describe('framed', () => {
  it('leaves room for the widest value beside the axis', () => {
    const y = valueAxis([0, 123_456_789])
    const [frame] = framed(parts({ y }), size)
    expect(frame.left).toBeGreaterThan(textWidth('120 000 000', 12))
  })
  it('leaves room for the last name below', () => {
    const x = namedAxis(Array.from({ length: 12 }, () => '25 Nov 2026'))
    const [frame] = framed(parts({ x }), size)
    expect(frame.atX(11) + textWidth('25 Nov 2026', 12) / 2).toBeLessThanOrEqual(320)
  })
  it('grows by the lines that a long title needs', () => {
    const [plain] = framed(parts(), size)
    const [longer, marks] = framed(
      parts({ yTitle: 'residual, N: force by the curve minus force applied, of all readings' }),
      size,
    )
    expect(longer.heightPx).toBeGreaterThan(plain.heightPx)
    expect(longer.bottom - longer.top).toBeCloseTo(plain.bottom - plain.top)
    expect(marks.filter((mark) => mark.kind === 'text' && mark.ink === 'title').length).toBeGreaterThan(2)
  })
})

describe('strideOf', () => {
  const labels = (step: number) => Array.from({ length: 9 }, (_, index) => ({ x: index * step, width: 30 }))
  it('writes all labels where they have room, else every so many', () => {
    expect(strideOf(labels(40), 5)).toBe(1)
    expect(strideOf(labels(20), 5)).toBe(2)
    expect(strideOf(labels(10), 5)).toBe(4)
  })
  it('writes one alone where no two have room', () => {
    expect(strideOf(labels(1), 5)).toBe(9)
  })
})
