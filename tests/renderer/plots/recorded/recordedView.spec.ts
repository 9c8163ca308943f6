import { describe, expect, it } from 'vitest'
import { leastSpanS, shownForces, spanOf } from '#renderer/plots/recorded/recordedView.ts'

describe('spanOf', () => {
  it('reaches from the first sample to the last, and half a second about a lone one', () => {
    expect(spanOf(Float64Array.of(1, 2, 4))).toEqual({ fromS: 1, toS: 4 })
    expect(spanOf(Float64Array.of(3))).toEqual({ fromS: 2.5, toS: 3.5 })
  })
})

describe('leastSpanS', () => {
  it('is eight samples of the whole curve, and a millisecond where there are none', () => {
    expect(leastSpanS({ fromS: 0, toS: 10 }, 1000)).toBeCloseTo(0.08, 12)
    expect(leastSpanS({ fromS: 0, toS: 10 }, 0)).toBe(1e-3)
  })
})

describe('shownForces', () => {
  const curve = { timeS: Float64Array.of(0, 1, 2, 3), force: Float64Array.of(0, 100, 50, 900) }
  const whole = { fromS: 0, toS: 3 }

  it('gives forces in shown units', () => {
    expect([...shownForces(curve, 2, { span: whole, whole }).force]).toEqual([0, 200, 100, 1800])
  })

  it('makes room for what is in view alone', () => {
    const { range } = shownForces(curve, 1, { span: { fromS: 0.5, toS: 2 }, whole })
    expect(range.min).toBeLessThanOrEqual(50)
    expect(range.max).toBeGreaterThanOrEqual(100)
    expect(range.max).toBeLessThan(200)
    expect(shownForces(curve, 1, { span: whole, whole }).range.max).toBeGreaterThanOrEqual(900)
  })
})
