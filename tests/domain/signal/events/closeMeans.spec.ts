import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { closeMeans, lowestAhead, meanOf } from '#domain/signal/events/closeMeans.ts'

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

describe('the lowest ahead of a point', () => {
  it('is that of the next point and of those no further than the span', () => {
    const timeS = Float64Array.of(0, 1, 2, 3, 10, 11)
    const values = Float64Array.of(1, 5, 4, 2, 9, 3)
    expect([...lowestAhead(values, timeS, 6, 2)]).toEqual([4, 2, 2, 9, 3, Number.POSITIVE_INFINITY])
    expect([...lowestAhead(values, timeS, 4, 2)]).toEqual([4, 2, 2, Number.POSITIVE_INFINITY])
  })

  it('is what looking at every point gives, on a thousand random ones', () => {
    const random = createRandom(2)
    let t = 0
    const timeS = Float64Array.from({ length: 1000 }, () => {
      t += random.unit()
      return t
    })
    const values = timeS.map(() => random.normal())
    const plain = timeS.map((from, i) =>
      Math.min(...values.filter((_, k) => k > i && (k === i + 1 || timeS[k]! - from <= 3))),
    )
    expect(lowestAhead(values, timeS, 1000, 3)).toEqual(plain)
  })
})
