import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { slopeBeforePeak } from '#domain/signal/loading/peak/loadingRate.ts'
import { createRecentSamples } from '#domain/signal/stream/recentSamples.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
import { takeOne } from '#tests/fakes/streams/cutStream.ts'

describe('the loading rate before a peak', () => {
  it('is known within four of its 2 % on a slow noisy ramp and follows the stroke of a pump', () => {
    for (let seed = 1; seed <= 50; seed++) {
      const random = createRandom(seed)
      const slow = createRecentSamples()
      for (let i = 0; i < 800; i++) takeOne(slow, i / 80, (100 * i) / 80 + random.normal())
      expect(slopeBeforePeak(slow, 799, 1)! / 100).toBeGreaterThan(0.92)
      expect(slopeBeforePeak(slow, 799, 1)! / 100).toBeLessThan(1.08)
      const pumped = createRecentSamples()
      // Rest until 0.3 s before the peak, then 2000 N/s.
      for (let i = 0; i < 800; i++) takeOne(pumped, i / 400, 2000 * Math.max(0, i / 400 - 1.7) + random.normal())
      expect(slopeBeforePeak(pumped, 799, 1)! / 2000).toBeGreaterThan(0.95)
    }
  })

  it('needs three samples', () => {
    const recent = createRecentSamples()
    takeOne(recent, 0, 0)
    takeOne(recent, 1, 5)
    expect(slopeBeforePeak(recent, 1, 0)).toBeNull()
  })
})

describe('the stretch before a peak', () => {
  type Kinked = { rateHz: number; kinkS: number; slope: number; before?: number; rippleN?: number; noise?: number }
  /**
   * Slope before a peak of a load that goes up at `slope` from `kinkS` before it on, and otherwise before that; a ripple from
   * sample to sample on top.
   */
  function slopeOf({ rateHz, kinkS, slope, before = 0, rippleN = 0, noise = 0 }: Kinked): number {
    const recent = createRecentSamples()
    for (let i = -2 * rateHz; i <= 0; i++) {
      const t = i / rateHz
      const line = t >= -kinkS ? slope * t : -slope * kinkS + before * (t + kinkS)
      takeOne(recent, t, line + (i % 2 === 0 ? rippleN : -rippleN))
    }
    return slopeBeforePeak(recent, 2 * rateHz, noise)!
  }
  /** Whether no sample before the kink was taken. */
  const afterKink = (kinked: Kinked) => Math.abs(slopeOf(kinked) - kinked.slope) < 1e-3 * kinked.slope

  it('is 0.1 s long where the slope is known, or five samples', () => {
    expect([0.099, 0.1].map((kinkS) => afterKink({ rateHz: 1000, kinkS, slope: 500, before: -500 }))).toEqual([
      false,
      true,
    ])
    expect([0.15, 0.2].map((kinkS) => afterKink({ rateHz: 20, kinkS, slope: 500, before: -500 }))).toEqual([
      false,
      true,
    ])
  })

  it('is doubled up to 0.8 s while noise leaves the slope unknown', () => {
    const unknown = { rateHz: 100, slope: 1, before: -100, rippleN: 1e-6, noise: 1e6 }
    expect([0.75, 0.79, 0.8].map((kinkS) => afterKink({ ...unknown, kinkS }))).toEqual([false, false, true])
  })

  it('is long enough when the standard error of the slope is 0.02 of it', () => {
    // Σ(t − t̄)² of 11 samples every 0.01 s: 11 · 120 / 12 · 0.01² = 0.011 s².
    const spread = Math.sqrt(0.011)
    const gentle = { rateHz: 100, kinkS: 0.15, slope: 500, before: 490 }
    const short = (noise: number) => Math.abs(slopeOf({ ...gentle, rippleN: 1e-6, noise }) - 500) < 1e-3
    expect(limitOf(short, 0.1, 5)).toBeCloseTo(0.02 * 500 * spread, 3)
    // Of the residuals themselves where those are more: ripple about its mean of 1/11, over 9 degrees of freedom.
    const residualSD = Math.sqrt((11 - 1 / 11) / 9)
    const shortBy = (rippleN: number) => Math.abs(slopeOf({ ...gentle, rippleN }) - 500) < 1e-3
    expect(limitOf(shortBy, 0.1, 5)).toBeCloseTo((0.02 * 500 * spread) / residualSD, 3)
  })

  it('is long enough where a line fits without residuals, whatever the noise, also where it lies flat', () => {
    const exact = { rateHz: 128, kinkS: 0.125, slope: 16, before: 0, noise: 1000 }
    expect(slopeOf(exact)).toBe(16)
    expect(slopeOf({ ...exact, slope: 0, before: 16 })).toBe(0)
  })

  it('is not doubled where a line fits the longer one worse by 1.3 than the noise explains', () => {
    // Residuals of a line through the 21 samples of 0.2 s, of which those before 0.15 s ago lie on another.
    const n = 21
    const t = Array.from({ length: n }, (_, i) => (i - 20) / 100)
    const bent = t.map((at) => (at < -0.15 ? 40 * (at + 0.15) : 0))
    const meanT = t.reduce((sum, at) => sum + at, 0) / n
    const meanF = bent.reduce((sum, f) => sum + f, 0) / n
    const stt = t.reduce((sum, at) => sum + (at - meanT) ** 2, 0)
    const stf = t.reduce((sum, at, i) => sum + (at - meanT) * (bent[i]! - meanF), 0)
    const sff = bent.reduce((sum, f) => sum + (f - meanF) ** 2, 0)
    const residualSD = Math.sqrt((sff - (stf * stf) / stt) / (n - 2))
    const isKept = (noise: number) =>
      Math.abs(slopeOf({ rateHz: 100, kinkS: 0.15, slope: 1, before: 41, rippleN: 1e-9, noise }) - 1) < 1e-3
    expect(limitOf(isKept, 0.05, 2)).toBeCloseTo(residualSD / 1.3, 3)
  })
})
