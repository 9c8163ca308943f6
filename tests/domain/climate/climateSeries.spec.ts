import { describe, expect, it } from 'vitest'
import { standingTimes } from '#domain/climate/climateSeries.ts'

const times = (...seconds: number[]) => Float64Array.from(seconds)

describe('how long a reading stands', () => {
  it('is until the next, and for the usual interval at the end', () => {
    expect([...standingTimes(times(0, 60, 120, 200)).standingS]).toEqual([60, 60, 80, 60])
  })

  it('is the usual interval before a gap, which is longer than three of them', () => {
    const { standingS, gaps } = standingTimes(times(0, 60, 120, 301, 361, 421))
    expect([...standingS]).toEqual([60, 60, 60, 60, 60, 60])
    expect(gaps).toEqual([{ fromS: 120, toS: 301 }])
    expect(standingTimes(times(0, 60, 120, 300, 360, 420)).gaps).toEqual([])
  })

  it('follows a logger that is set otherwise', () => {
    const slow = Array.from({ length: 600 }, (_, i) => i * 3600)
    const quick = Array.from({ length: 6000 }, (_, i) => 600 * 3600 + i * 60)
    expect(standingTimes(Float64Array.from([...slow, ...quick])).gaps).toEqual([])
  })

  it('is nothing for a lone reading, and refuses times that do not rise', () => {
    expect([...standingTimes(times(7)).standingS]).toEqual([0])
    expect(standingTimes(times()).standingS).toHaveLength(0)
    expect(() => standingTimes(times(0, 60, 60))).toThrow(RangeError)
  })
})
