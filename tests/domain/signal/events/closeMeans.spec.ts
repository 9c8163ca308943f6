import { describe, expect, it } from 'vitest'
import { closeMeans, meanOf } from '#domain/signal/events/closeMeans.ts'

describe('means close to a point', () => {
  it('take the points less than the span away, the point itself included', () => {
    const curve = { timeS: Float64Array.of(0, 1, 2, 3, 10), force: Float64Array.of(1, 3, 5, 11, 20) }
    const { before, after } = closeMeans(curve, 5, 2)
    expect([...before]).toEqual([1, 2, 4, 8, 20])
    expect([...after]).toEqual([2, 4, 8, 11, 20])
  })

  it('look at no point beyond the last that counts', () => {
    const curve = { timeS: Float64Array.of(0, 1, 2), force: Float64Array.of(1, 3, 500) }
    expect([...closeMeans(curve, 2, 5).after]).toEqual([2, 3])
  })

  it('are those of the values between', () => {
    expect(meanOf(Float64Array.of(9, 1, 2, 6, 9), 1, 4)).toBe(3)
  })
})
