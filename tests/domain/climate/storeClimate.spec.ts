import { describe, expect, it } from 'vitest'
import { type ClimateReading, freezeThawCycles, storeClimate } from '#domain/climate/storeClimate.ts'

const day = 86_400
const readings = (days: number, at: (d: number) => [number, number | null]): ClimateReading[] =>
  Array.from({ length: days }, (_, d) => {
    const [temperatureC, humidityPercent] = at(d)
    return { timeS: d * day, temperatureC, humidityPercent }
  })

describe('the climate of a store', () => {
  it('has means over time, however often the logger wrote', () => {
    const found = storeClimate([
      { timeS: 0, temperatureC: 10, humidityPercent: 50 },
      { timeS: 9 * day, temperatureC: 20, humidityPercent: 60 },
      { timeS: 10 * day, temperatureC: 20, humidityPercent: 60 },
    ])!
    expect(found.temperatureC).toEqual({ min: 10, mean: (9 * 10 + 20 + 20) / 11, max: 20 })
  })

  it('counts a swing of moisture once for its fall and rise', () => {
    // 65 % and 35 % at 20 degrees: 12.0 and 7.0 % moisture, ten swings in a year.
    const found = storeClimate(readings(366, (d) => [20, Math.floor(d / 18.3) % 2 === 0 ? 65 : 35]))!
    expect(found.moisturePercent!.max).toBeCloseTo(12, 1)
    const [, , four] = found.swings
    expect(four!.leastPercent).toBe(4)
    expect(four!.perYear).toBeGreaterThan(9)
    expect(four!.perYear).toBeLessThan(10.1)
  })

  it('has no moisture without humidity', () => {
    expect(storeClimate(readings(3, () => [5, null]))).toMatchObject({ humidityPercent: null, moisturePercent: null })
  })

  it('counts a frost once it has thawed, and no trembling about 0', () => {
    expect(freezeThawCycles([5, -5, 0.5, -0.5, 0.5, 5, -3, 4, -2])).toBe(2)
  })

  it('is nothing without readings, and refuses a time that goes back', () => {
    expect(storeClimate([])).toBeNull()
    expect(() => storeClimate([...readings(2, () => [5, 50]), ...readings(1, () => [5, 50])])).toThrow(RangeError)
  })
})
