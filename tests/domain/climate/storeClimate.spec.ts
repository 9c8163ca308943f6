import { describe, expect, it } from 'vitest'
import { climateLimits } from '#contract/findings/climate.ts'
import { storeClimate } from '#domain/climate/storeClimate.ts'

const day = 86_400
const limits = climateLimits.parse({})
const series = (count: number, at: (i: number) => [number, number | null], stepS = day) => ({
  timeS: Float64Array.from({ length: count }, (_, i) => i * stepS),
  temperatureC: Float64Array.from({ length: count }, (_, i) => at(i)[0]),
  humidityPercent: Float64Array.from({ length: count }, (_, i) => at(i)[1] ?? Number.NaN),
})

describe('the climate of a store', () => {
  it('has means over time, however often the logger wrote', () => {
    const uneven = {
      timeS: Float64Array.of(0, 2 * day, 3 * day, 4 * day),
      temperatureC: Float64Array.of(10, 20, 20, 20),
      humidityPercent: Float64Array.of(50, 60, 60, 60),
    }
    expect(storeClimate(uneven, limits)!.whole.temperatureC).toEqual({ min: 10, mean: (2 * 10 + 3 * 20) / 5, max: 20 })
  })

  it('counts a swing of moisture once for its fall and rise', () => {
    // 65 % and 35 % at 20 degrees: 12.0 and 7.0 % moisture, ten swings in a year.
    const { whole } = storeClimate(
      series(366, (d) => [20, Math.floor(d / 18.3) % 2 === 0 ? 65 : 35]),
      limits,
    )!
    expect(whole.moisturePercent!.max).toBeCloseTo(12, 1)
    expect(whole.moistureSwings.map(({ least }) => least)).toEqual([1, 2, 4])
    expect(whole.moistureSwings.at(-1)!.count).toBeGreaterThan(9)
    expect(whole.moistureSwings.at(-1)!.count).toBeLessThan(10.1)
    expect(whole.temperatureSwings.every(({ count }) => count === 0)).toBe(true)
  })

  it('counts each calendar year by itself', () => {
    // From 1 January 1970; one frost in each half year.
    const { years } = storeClimate(
      series(2 * 365 + 1, (d) => [d % 182 === 90 ? -5 : 5, 70]),
      limits,
    )!
    expect(years.map(({ year }) => year)).toEqual([1970, 1971, 1972])
    expect(years.map(({ freezeThawCycles }) => freezeThawCycles)).toEqual([2, 2, 0])
    expect(years[0]!.hours).toBeCloseTo(365 * 24, 9)
    expect(years[0]!.temperatureSwings).toEqual([
      { least: 5, count: 2 },
      { least: 10, count: 2 },
      { least: 20, count: 0 },
    ])
  })

  it('counts the hours beyond limits, without those of gaps', () => {
    const hourly = series(48, (h) => [h < 12 ? -1 : 31, h < 6 ? 30 : 85], 3600)
    expect(storeClimate(hourly, limits)!.whole.hoursBeyond).toEqual({
      temperatureBelow: 12,
      temperatureAbove: 36,
      humidityBelow: 6,
      humidityAbove: 42,
    })
    const gap = { ...hourly, timeS: hourly.timeS.map((time, i) => (i < 24 ? time : time + 10 * day)) }
    const found = storeClimate(gap, limits)!
    expect(found.whole.hoursBeyond.temperatureAbove).toBe(36)
    expect(found).toMatchObject({ gapCount: 1, gapHours: 241 })
  })

  it('has no moisture without humidity', () => {
    const found = storeClimate(
      series(3, () => [5, null]),
      limits,
    )!
    expect(found.whole).toMatchObject({ humidityPercent: null, moisturePercent: null })
    expect(found.bands).toMatchObject({ humidityPercent: null, moisturePercent: null })
  })

  it('is nothing without readings', () => {
    expect(
      storeClimate(
        series(0, () => [5, 50]),
        limits,
      ),
    ).toBeNull()
  })
})
