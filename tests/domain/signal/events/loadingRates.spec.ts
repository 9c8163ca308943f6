import { describe, expect, it } from 'vitest'
import { loadingRates } from '#domain/signal/events/loadingRates.ts'
import { lines, madeCurve } from '#tests/fakes/madeCurve.ts'

describe('loading rates', () => {
  it('of a ramp are its slope everywhere', () => {
    const curve = madeCurve((t) => 20 + 300 * t, { intervalS: 0.01, endS: 10, zero: 20 })
    const { meanRateNPerS, rates, rateSpreadPercent } = loadingRates(curve)
    expect(meanRateNPerS).toBeCloseTo(300, 8)
    expect(rates).toHaveLength(10)
    for (const { fromS, toS, rateNPerS } of rates) {
      expect(toS - fromS).toBeCloseTo(1, 10)
      expect(rateNPerS).toBeCloseTo(300, 6)
    }
    expect(rateSpreadPercent).toBeCloseTo(0, 6)
  })

  it('of a press that is driven faster half way are both slopes, and their mean and spread', () => {
    // 100 N/s for 10 s, then 300 N/s for 10 s: 400 N at 4 s, 3600 N at 10 + 2600/300 s; 3200 N in 14.6667 s.
    const curve = madeCurve(lines([0, 0], [10, 1000], [20, 4000]), { intervalS: 0.01, endS: 20 })
    const { meanRateNPerS, rates, rateSpreadPercent } = loadingRates(curve)
    expect(meanRateNPerS).toBeCloseTo(3200 / (6 + 26 / 3), 6)
    expect(rates.map(({ rateNPerS }) => Math.round(rateNPerS))).toEqual([...Array(5).fill(100), ...Array(5).fill(300)])
    // Stretches from 4 s to 18 s; scipy 1.17.1: 100 * scipy.stats.variation([100]*3 + [300]*4, ddof=1) = 49.88876515698588
    expect(rateSpreadPercent).toBeCloseTo(49.88876515698588, 1)
  })

  it('have no spread where the load sagged between its first and its last rise', () => {
    const curve = madeCurve(lines([0, 0], [0.9, 890], [9.1, 800], [10, 1000]), { intervalS: 0.01, endS: 10 })
    const { rates, rateSpreadPercent } = loadingRates(curve)
    expect(rates[4]!.rateNPerS).toBeCloseTo(-90 / 8.2, 6)
    expect(rateSpreadPercent).toBeNull()
  })

  it('leave out a stretch that samples are missing from', () => {
    const whole = madeCurve((t) => 300 * t, { intervalS: 0.01, endS: 10 })
    // All of the fourth of ten seconds, and some beside it.
    const kept = [...whole.timeS.keys()].filter((i) => whole.timeS[i]! < 2.8 || whole.timeS[i]! > 4.2)
    const pick = (values: Float64Array) => Float64Array.from(kept, (i) => values[i]!)
    const { rates } = loadingRates({ ...whole, timeS: pick(whole.timeS), force: pick(whole.force) })
    expect(rates.map(({ fromS }) => Math.round(fromS))).toEqual([0, 1, 2, 4, 5, 6, 7, 8, 9])
    for (const { rateNPerS } of rates) expect(rateNPerS).toBeCloseTo(300, 6)
  })

  it('are fewer in a curve of few samples, and not there in one of hardly any', () => {
    const slow = loadingRates(madeCurve((t) => 300 * t, { intervalS: 1, endS: 17 }))
    expect(slow.rates).toHaveLength(4)
    expect(slow.meanRateNPerS).toBeCloseTo(300, 8)
    // Of four stretches two lie between 10 % and 90 % of the peak, of five three.
    expect(slow.rateSpreadPercent).toBeNull()
    expect(loadingRates(madeCurve((t) => 300 * t, { intervalS: 1, endS: 20 })).rateSpreadPercent).toBeLessThan(1e-8)
    const two = loadingRates(madeCurve((t) => 300 * t, { intervalS: 1, endS: 2 }))
    expect(two.rates).toEqual([])
    expect(two.rateSpreadPercent).toBeNull()
    const one = loadingRates(madeCurve(() => 300, { intervalS: 1, endS: 0 }))
    expect(one.meanRateNPerS).toBeNull()
  })
})

describe('loading rates of any loading', () => {
  const points = lines([0, 0], [10, 1000], [20, 4000])
  const made = (zero: number, onsetS: number) => {
    const curve = madeCurve((t) => zero + points(t), { intervalS: 0.01, endS: 20, zero })
    return loadingRates({ ...curve, timeS: curve.timeS.map((t) => t + onsetS), onsetS, peakS: 20 + onsetS })
  }

  it('are the same from any level at rest and at any time', () => {
    const plain = made(0, 0)
    const moved = made(500, 7)
    expect(moved.meanRateNPerS).toBeCloseTo(plain.meanRateNPerS!, 8)
    expect(moved.rateSpreadPercent).toBeCloseTo(plain.rateSpreadPercent!, 8)
    expect(moved.rates.map(({ fromS, toS }) => [fromS, toS])).toEqual(
      Array.from({ length: 10 }, (_, k) => [expect.closeTo(7 + 2 * k, 9), expect.closeTo(9 + 2 * k, 9)]),
    )
  })

  it('have a spread where they are small, but none where they are none or fall on the mean', () => {
    const spread = (scale: number, middleTo: number) =>
      loadingRates(
        madeCurve(lines([0, 0], [0.9, 890 * scale], [9.1, middleTo * scale], [10, 1000 * scale]), {
          intervalS: 0.01,
          endS: 10,
        }),
      ).rateSpreadPercent
    expect(spread(1e-3, 899)).toBeGreaterThan(0)
    expect(spread(1, 890)).toBeNull()
    expect(spread(0.05, 800)).toBeNull()
  })
})
