import { describe, expect, it } from 'vitest'
import { calmCurve } from '#domain/signal/events/calmCurve.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
import { madeCurve } from '#tests/fakes/madeCurve.ts'

describe('calmed curve', () => {
  const ramp = (noise: number, intervalS: number) => madeCurve((t) => 100 * t, { intervalS, endS: 20, noise })

  it('has means over 0.2 s up to a time, and their noise', () => {
    const { timeS, force, noise } = calmCurve(ramp(8, 0.0125), 10)
    // 16 samples to a mean; 0 to 15 are at 0.09375 s on average.
    expect(timeS[0]).toBeCloseTo(0.09375, 12)
    expect(force[0]).toBeCloseTo(9.375, 10)
    expect(noise).toBeCloseTo(8 / 4, 12)
    // 801 samples up to 10 s.
    expect(timeS).toHaveLength(50)
  })

  it('has longer ones where noise asks for it, and the samples themselves where those are far apart', () => {
    // Three SDs of 16 samples, 3 x 20 / sqrt(16) = 15 N, are more than 0.005 of 2000 N.
    expect(calmCurve(ramp(20, 0.0125), 20).timeS[0]).toBeCloseTo(0.0125 * 19.5, 12)
    expect([...calmCurve(ramp(1, 0.25), 1).force]).toEqual([0, 25, 50, 75, 100])
  })
})

describe('how long the means are', () => {
  it('is decided by three noise SDs of them and 0.005 of the peak above the level at rest', () => {
    // 16 samples: 3 σ / 4 = 10 N of 2000 N at σ = 13.333 N.
    const longer = (noise: number) =>
      calmCurve(
        madeCurve((t) => 1000 + 100 * t, { intervalS: 0.0125, endS: 20, noise, zero: 1000 }),
        20,
      ).timeS[0]! > 0.1
    expect(limitOf(longer, 5, 30)).toBeCloseTo(40 / 3, 3)
    const calm = calmCurve(
      madeCurve((t) => 100 * t, { intervalS: 0.25, endS: 20, peak: 2000, noise: 10 / 3 }),
      20,
    )
    expect(calm.timeS[0]).toBe(0)
  })

  it('is that of a sample where the samples are far apart, or nothing is known of their interval', () => {
    const slow = madeCurve((t) => 100 * t, { intervalS: 1, endS: 5 })
    expect([...calmCurve(slow, 5).force]).toEqual([0, 100, 200, 300, 400, 500])
    expect([...calmCurve({ ...slow, intervalS: 0 }, 5).force]).toEqual([0, 100, 200, 300, 400, 500])
  })
})
