import { describe, expect, it } from 'vitest'
import { individualsChart } from '#domain/calibration/control/individualsChart.ts'

describe('individuals chart', () => {
  it('has the limits of the handbook example', () => {
    // NIST/SEMATECH e-Handbook 6.3.2.2, ten flow rates (from memory): mean 50.81, mean moving range 1.8778,
    // limits 45.8159 and 55.8041, rounded to 4 decimals there; tolerance 2e-4. R: mean(abs(diff(x))) / 1.128 * 3.
    const chart = individualsChart([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])
    expect(chart.centre).toBeCloseTo(50.81, 10)
    expect(chart.meanMovingRange).toBeCloseTo(1.8778, 4)
    expect(Math.abs(chart.upper - 55.8041)).toBeLessThan(2e-4)
    expect(Math.abs(chart.lower - 45.8159)).toBeLessThan(2e-4)
    // D4 for pairs, 3.267 in every table of chart constants.
    expect(chart.movingRangeUpper / chart.meanMovingRange).toBeCloseTo(3.267, 10)
  })

  it('moves with the values and keeps its width', () => {
    const chart = individualsChart([1, 2, 4, 3])
    const moved = individualsChart([101, 102, 104, 103])
    expect(moved.upper - moved.lower).toBeCloseTo(chart.upper - chart.lower, 10)
    expect(moved.centre - chart.centre).toBeCloseTo(100, 10)
  })

  it('is there for two values: their mean, 3 times their distance over 1.128 either way', () => {
    expect(individualsChart([2, 4]).upper).toBeCloseTo(3 + 6 / 1.128, 12)
  })

  it('refuses fewer than two values', () => {
    expect(() => individualsChart([1])).toThrow(RangeError)
    expect(() => individualsChart([1, Number.NaN])).toThrow(RangeError)
  })
})
