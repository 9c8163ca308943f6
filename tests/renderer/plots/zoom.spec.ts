import { describe, expect, it } from 'vitest'
import { drawnSpan, pan, spanAbout, valueRange, zoom } from '#renderer/plots/zoom.ts'

const whole = { fromS: 0, toS: 10 }

describe('zoom', () => {
  it('keeps the centre where it is on the screen', () => {
    expect(zoom({ fromS: 0, toS: 10 }, 0.5, 2, whole, 0.01)).toEqual({ fromS: 1, toS: 6 })
  })
  it('goes no farther out than the whole and no closer than the least', () => {
    expect(zoom({ fromS: 4, toS: 6 }, 100, 5, whole, 0.01)).toEqual(whole)
    const close = zoom({ fromS: 4, toS: 6 }, 1e-9, 5, whole, 0.01)
    expect(close.toS - close.fromS).toBeCloseTo(0.01, 12)
  })
  it('stays inside the curve at its ends', () => {
    expect(zoom({ fromS: 0, toS: 2 }, 2, 2, whole, 0.01)).toEqual({ fromS: 0, toS: 4 })
  })
})

describe('pan', () => {
  it('moves by a share of what is shown and stops at the ends', () => {
    expect(pan({ fromS: 2, toS: 4 }, 0.5, whole)).toEqual({ fromS: 3, toS: 5 })
    expect(pan({ fromS: 7, toS: 9 }, 5, whole)).toEqual({ fromS: 8, toS: 10 })
    expect(pan({ fromS: 1, toS: 3 }, -5, whole)).toEqual({ fromS: 0, toS: 2 })
  })
})

describe('drawnSpan', () => {
  it('takes a span drawn from right to left', () => {
    expect(drawnSpan(6, 2, whole, 0.01)).toEqual({ fromS: 2, toS: 6 })
  })
  it('cuts what reaches beyond the curve', () => {
    expect(drawnSpan(-3, 4, whole, 0.01)).toEqual({ fromS: 0, toS: 4 })
  })
  it('widens a span too narrow to hold samples', () => {
    const { fromS, toS } = drawnSpan(5, 5.001, whole, 0.1)
    expect(toS - fromS).toBeCloseTo(0.1, 9)
  })
})

describe('spanAbout', () => {
  it('shows what lies on both sides of a stretch', () => {
    expect(spanAbout({ fromS: 4, toS: 6 }, whole, 0.01)).toEqual({ fromS: 2.8, toS: 7.2 })
  })
  it('gives an instant room too, within the curve', () => {
    const { fromS, toS } = spanAbout({ fromS: 0.1, toS: 0.1 }, whole, 0.01)
    expect(fromS).toBe(0)
    expect(toS).toBeCloseTo(0.4, 12)
  })
})

describe('valueRange', () => {
  it('begins at zero for a whole curve, whatever its lowest sample', () => {
    const { min, max } = valueRange(40, 100, true)
    expect(min).toBeCloseTo(-4, 12)
    expect(max).toBeCloseTo(110, 12)
  })
  it('lies closely about what is in sight once zoomed in', () => {
    const { min, max } = valueRange(900, 1000, false)
    expect(min).toBeCloseTo(890, 12)
    expect(max).toBeCloseTo(1016, 12)
  })
  it('has a height for a flat curve and for none at all', () => {
    const flat = valueRange(5, 5, false)
    expect(flat.max).toBeGreaterThan(flat.min)
    expect(valueRange(Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, true)).toEqual({ min: 0, max: 1 })
  })
})
