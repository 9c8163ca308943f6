import { describe, expect, it } from 'vitest'
import { between } from '#domain/numbers/between.ts'

describe('between', () => {
  it('is null beside a point that is not there', () =>
    expect(between(Float64Array.of(0, 1, 2), Float64Array.of(1, Number.NaN, 3), 0.5)).toBeNull())
  it('is a point itself where it lies on one, though there is nothing beside it', () => {
    const values = Float64Array.of(Number.NaN, 2, 3, Number.NaN)
    expect([1, 2].map((at) => between(Float64Array.of(0, 1, 2, 3), values, at))).toEqual([2, 3])
    expect(between(Float64Array.of(0, 1), Float64Array.of(Number.NaN, 5), 1)).toBe(5)
  })
  it('is null without points', () => expect(between(Float64Array.of(), Float64Array.of(), 0)).toBeNull())
})
