import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { countPeaks } from '#domain/signal/events/localPeaks.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
import { madeCurve } from '#tests/fakes/madeCurve.ts'

describe('the number of peaks', () => {
  const random = createRandom(5)

  it('is one for a load that only rises, however noisy', () => {
    const curve = madeCurve((t) => 200 * t + 20 * random.normal(), { intervalS: 0.01, endS: 20, breakS: 20 })
    expect(countPeaks(curve, 20)).toBe(1)
  })

  it('counts every high from which the load falls by a hundredth of the peak, and the last', () => {
    const drops = [4, 8, 9.5]
    const load = (t: number) => 200 * t - drops.reduce((sum, at) => sum + (t >= at ? 300 : 0), 0)
    expect(countPeaks(madeCurve(load, { intervalS: 0.01, endS: 20, breakS: 20 }), 1)).toBe(4)
    const small = (t: number) => 200 * t - (t >= 4 ? 20 : 0)
    expect(countPeaks(madeCurve(small, { intervalS: 0.01, endS: 20, breakS: 20 }), 1)).toBe(1)
  })

  it('counts a fall of a hundredth of the peak and of six noise SDs of the means over 0.04 s', () => {
    // The mean before the drop and the one after it lie 20 N/s x 0.04 s = 0.8 N closer than the drop.
    const peaks = (dropN: number, noise: number) =>
      countPeaks(
        madeCurve((t) => 20 * t - (t > 3.995 ? dropN : 0), { intervalS: 0.01, endS: 20, breakS: 20, peak: 400 }),
        noise,
      )
    expect(peaks(4.4, 0)).toBe(1)
    expect(peaks(5.2, 0)).toBe(2)
    // 6 x 2 N / sqrt(4) = 6 N.
    expect(peaks(6.4, 2)).toBe(1)
    expect(peaks(7.2, 2)).toBe(2)
  })

  it('does not count the swinging after a drop', () => {
    const load = (t: number) =>
      200 * t - (t < 10 ? 0 : 400 + 60 * Math.exp(-(t - 10) / 0.02) * Math.sin(2 * Math.PI * 100 * (t - 10)))
    expect(countPeaks(madeCurve(load, { intervalS: 0.002, endS: 20, breakS: 20 }), 1)).toBe(2)
  })

  it('is one for a load that is let go again, and for none at all', () => {
    const load = (t: number) => (t < 10 ? 200 * t : 2000 * Math.exp(-(t - 10)))
    expect(countPeaks(madeCurve(load, { intervalS: 0.02, endS: 20, breakS: null }), 1)).toBe(1)
    expect(countPeaks(madeCurve(load, { intervalS: 0.02, endS: 0, breakS: null }), 1)).toBe(1)
  })
})

describe('what makes a high', () => {
  /** Values one after another, each for a mean of its own. */
  const peaksOf = (...values: number[]) =>
    countPeaks(
      madeCurve((t) => values[Math.round(t / 0.04)]!, {
        intervalS: 0.04,
        endS: 0.04 * (values.length - 1),
        breakS: null,
      }),
      0,
    )

  it('is to come down by a hundredth of the peak and to go up by one again, no less', () => {
    expect(peaksOf(100, 400, 396, 400)).toBe(2)
    expect(peaksOf(100, 400, 396.1, 400)).toBe(1)
    expect(peaksOf(100, 400, 396, 399.9)).toBe(1)
    // Up to the last mean.
    expect(peaksOf(100, 400, 300)).toBe(1)
    expect(peaksOf(100, 400, 300, 400, 300)).toBe(2)
  })

  it('is seen in single samples where these are far apart', () => {
    const saw = Float64Array.of(0, 10, 5, 10, 5, 10, 5, 10)
    expect(
      countPeaks(
        madeCurve((t) => saw[Math.round(10 * t)]!, { intervalS: 0.1, endS: 0.7 }),
        0,
      ),
    ).toBe(4)
  })

  it('is a hundredth of the load above the level at rest', () => {
    // From 100 N to 400 N: 3 N.
    const drops = (byN: number) =>
      countPeaks(
        madeCurve((t) => (t < 1 ? 100 + 300 * t : t >= 1.5 && t < 2 ? 400 - byN : 400), {
          intervalS: 0.04,
          endS: 3,
          zero: 100,
        }),
        0,
      )
    expect([2.9, 3.1].map(drops)).toEqual([1, 2])
  })

  it('is six noise SDs of means of ten samples, 4 ms apart', () => {
    // Level but for a drop between the 1000th sample and the next, which begins a mean: 6 x 10 / sqrt(10) = 18.974 N.
    const drops = (byN: number) =>
      countPeaks(
        madeCurve((t) => (t > 3.998 && t < 5 ? 400 - byN : 400), { intervalS: 0.004, endS: 8, peak: 400 }),
        10,
      ) === 2
    expect(limitOf(drops, 10, 30)).toBeCloseTo(60 / Math.sqrt(10), 2)
  })
})
