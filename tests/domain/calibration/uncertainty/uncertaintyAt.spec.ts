import { describe, expect, it } from 'vitest'
import type { UncertaintyModel } from '#contract/calibration/uncertainty.ts'
import { uncertaintyAt } from '#domain/calibration/uncertainty/uncertaintyAt.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

/** A line of 0.1 N per count through zero; curve known to 0.03 N in the middle, readings to 0.04 N. */
const model: UncertaintyModel = {
  centred: {
    centre: 5000,
    scale: 5000,
    powers: [0, 1],
    coefficients: [500, 500],
    covariance: [
      [0.0009, 0],
      [0, 0.0016],
    ],
    degreesOfFreedom: 10,
  },
  readingRange: [0, 10_000],
  forceRangeN: [100, 1000],
  repeatabilityN: 0.04,
  repeatabilityDegreesOfFreedom: 8,
  lackOfFitHalfWidthN: null,
  weightsShare: null,
  buoyancyShare: null,
  leverShare: null,
  gravityShare: null,
  resolution: null,
  zeroHalfWidthN: null,
  reversibilityShare: null,
  creepShare: null,
}

describe('uncertainty at a force', () => {
  it('combines fit and repeatability by squares, with effective degrees of freedom', () => {
    // By hand at 500 N: sqrt(0.03² + 0.04²) = 0.05; Welch-Satterthwaite 0.05⁴ / (0.03⁴/10 + 0.04⁴/8) = 15.586;
    // R 4.2.2: qt(.975, 6.25e-6 / (8.1e-8 + 3.2e-7)) = 2.124490553.
    const at = uncertaintyAt(model, 500)
    expect(at.combinedN).toBeCloseTo(0.05, 12)
    expect(at.expandedN).toBeCloseTo(0.1, 12)
    expect(at.expandedPercent).toBeCloseTo(0.02, 12)
    expect(at.effectiveDegreesOfFreedom).toBeCloseTo(6.25e-6 / (8.1e-8 + 3.2e-7), 8)
    expect(at.coverageFactor95).toBeCloseTo(2.124490553, 8)
    expect(at.expanded95N).toBeCloseTo(0.05 * at.coverageFactor95, 12)
    expect(at.contributions.map(({ source }) => source)).toEqual(['fit', 'repeatability'])
  })

  it('takes rectangular half-widths by the square root of three, shares of the force with the force', () => {
    // JCGM 100, 4.3.7 (from memory): half-width over sqrt(3). By hand at 300 N.
    const at = uncertaintyAt(
      {
        ...model,
        weightsShare: 5e-4,
        buoyancyShare: 2e-6,
        leverShare: 1e-3,
        gravityShare: 5e-5,
        resolution: 1,
        zeroHalfWidthN: 0.3,
        reversibilityShare: 2e-3,
        creepShare: 4e-4,
        lackOfFitHalfWidthN: 0.6,
      },
      300,
    )
    const of = (source: string) => at.contributions.find((line) => line.source === source)!.standardUncertaintyN
    expect(of('weights')).toBeCloseTo(0.15 / Math.sqrt(3), 12)
    expect(of('buoyancy')).toBeCloseTo(0.0006 / Math.sqrt(3), 12)
    expect(of('lever')).toBeCloseTo(0.3 / Math.sqrt(3), 12)
    expect(of('gravity')).toBeCloseTo(0.015 / Math.sqrt(3), 12)
    // One count is 0.1 N: 0.1 / sqrt(12).
    expect(of('resolution')).toBeCloseTo(0.1 / Math.sqrt(12), 8)
    expect(of('zero')).toBeCloseTo(0.3 / Math.sqrt(3), 12)
    expect(of('reversibility')).toBeCloseTo(0.6 / Math.sqrt(3), 12)
    expect(of('creep')).toBeCloseTo(0.12 / Math.sqrt(3), 12)
    expect(of('lack-of-fit')).toBeCloseTo(0.6 / Math.sqrt(3), 12)
    // At 300 N u = (3000 - 5000) / 5000 = -0.4: variance of the curve 0.0009 + 0.16 · 0.0016.
    expect(of('fit')).toBeCloseTo(Math.sqrt(0.0009 + 0.16 * 0.0016), 10)
    expect(at.combinedN).toBeCloseTo(Math.hypot(...at.contributions.map((line) => line.standardUncertaintyN)), 12)
  })

  it('goes a little beyond the readings where the curve reaches a force only there, and stays at the nearest end else', () => {
    // At 1000 N the curve needs a reading of 10,000: within a fifth of the width beyond 9000, not beyond 5000. By hand,
    // u = 1 gives a variance of 0.0009 + 0.0016, and the end at 5000 (u = 0) 0.0009.
    const fit = (readingRange: [number, number]) =>
      uncertaintyAt({ ...model, readingRange }, 1000).contributions[0]!.standardUncertaintyN
    expect(fit([1000, 9000])).toBeCloseTo(0.05, 10)
    expect(fit([1000, 5000])).toBeCloseTo(0.03, 10)
  })

  it('looks for the reading no farther than a fifth of their width beyond the readings', () => {
    // The reading of 10,000 lies within a fifth of the width beyond 8500 for readings from 1000 on; that of 1000 within a fifth
    // below 2333 for readings up to 9000. Variance of the curve at 10,000: 0.0009 + 0.0016; at 1000: 0.0009 + 0.64 · 0.0016.
    const fit = (readingRange: [number, number], forceN: number) =>
      uncertaintyAt({ ...model, readingRange }, forceN).contributions[0]!.standardUncertaintyN
    const reachesUp = (high: number) => fit([1000, high], 1000) > 0.05 - 1e-9
    expect(limitOf(reachesUp, 7000, 9500)).toBeCloseTo(8500, 1)
    const reachesDown = (low: number) => fit([low, 9000], 100) > Math.sqrt(0.0009 + 0.64 * 0.0016) - 1e-9
    expect(limitOf(reachesDown, 1500, 4000)).toBeCloseTo(7000 / 3, 1)
  })

  it('finds the reading of a force just beyond the readings at either end', () => {
    // 100.5 N is the reading of 1005, 999.5 N that of 9995: u = -0.799 and 0.999.
    const fit = (forceN: number) =>
      uncertaintyAt({ ...model, readingRange: [1010, 9990] }, forceN).contributions[0]!.standardUncertaintyN
    expect(fit(100.5)).toBeCloseTo(Math.sqrt(0.0009 + 0.799 ** 2 * 0.0016), 10)
    expect(fit(999.5)).toBeCloseTo(Math.sqrt(0.0009 + 0.999 ** 2 * 0.0016), 10)
    // And of forces just inside, and at the very ends.
    expect(fit(101.5)).toBeCloseTo(Math.sqrt(0.0009 + 0.797 ** 2 * 0.0016), 10)
    for (const forceN of [101, 999])
      expect(fit(forceN)).toBeCloseTo(Math.sqrt(0.0009 + (forceN / 500 - 1) ** 2 * 0.0016), 10)
  })

  it('says something of both ends of the calibrated range', () => {
    expect([100, 1000].map((forceN) => uncertaintyAt(model, forceN).forceN)).toEqual([100, 1000])
  })

  it('says nothing of a force outside the calibrated range', () => {
    expect(() => uncertaintyAt(model, 99)).toThrow(RangeError)
    expect(() => uncertaintyAt(model, 1001)).toThrow(RangeError)
  })
})
