import { describe, expect, it } from 'vitest'
import { boundPercent, samplingBound } from '#domain/signal/loading/samplingBound.ts'

describe('sampling bound', () => {
  it.each([
    // Largest miss of a linear ramp that breaks between two samples, rate / sample rate; exact arithmetic, no source needed.
    [500, 10, 50],
    [500, 80, 6.25],
    [500, 1000, 0.5],
    [2000, 10, 200],
    [2000, 80, 25],
  ])('of %i N/s at %i samples a second is %f N', (rateNPerS, sampleRateHz, boundN) => {
    expect(samplingBound(rateNPerS, 1 / sampleRateHz, 0)).toBeCloseTo(boundN, 12)
  })

  it('at 667 N/s to 40 kN is 1 % of the peak at 1.67 samples a second', () => {
    // ISO 6892-1 Annex A, f_min = rate / (F q) x 100 (from memory): 667 / (40000 x 1) x 100 = 1.6675 per s.
    expect(boundPercent(samplingBound(667, 1 / 1.6675, 0), 40_000)).toBeCloseTo(1, 10)
  })

  it('adds the settling time of the converter, and is nothing on a falling load', () => {
    expect(samplingBound(500, 0.1, 0.3)).toBeCloseTo(200, 12)
    expect(samplingBound(-500, 0.1, 0.3)).toBe(0)
    expect(boundPercent(1, 0)).toBeNull()
    expect(boundPercent(0.005, 0.5)).toBeCloseTo(1, 12)
    expect(() => samplingBound(500, 0, 0)).toThrow(RangeError)
  })

  it('holds in a simulated ramp whatever the phase of sampling', () => {
    for (let phase = 0; phase < 1; phase += 0.01) {
      const breakS = 10 + phase * 0.1
      const highest = Math.floor(breakS / 0.1 + 1e-9) * 0.1 * 500
      expect(500 * breakS - highest).toBeLessThanOrEqual(samplingBound(500, 0.1, 0) + 1e-9)
    }
  })
})
