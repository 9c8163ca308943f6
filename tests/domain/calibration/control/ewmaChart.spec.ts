import { describe, expect, it } from 'vitest'
import { ewmaChart } from '#domain/calibration/control/ewmaChart.ts'

describe('EWMA chart', () => {
  it('has the values and limits of the handbook example', () => {
    // NIST/SEMATECH e-Handbook 6.3.2.4 (from memory): weight 0.3, target 50, s 2.0539; values rounded there, tolerance 6e-5
    // (52.1 -> 51.9882 and limits 47.4116 to 52.5884 likewise).
    const data = [
      52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6,
      52.1,
    ]
    const printed = [
      50.6, 49.52, 50.564, 50.1848, 50.1594, 49.2116, 49.7481, 49.8537, 50.2576, 50.3303, 50.1112, 49.3578, 49.5205,
      50.0543, 49.378, 49.9246, 50.7272, 51.2291, 51.9403, 51.9882,
    ]
    const chart = ewmaChart(data, 50, 2.0539, 0.3)
    printed.forEach((expected, index) => {
      expect(Math.abs(chart.smoothed[index]! - expected)).toBeLessThan(6e-5)
    })
    expect(Math.abs(chart.upper - 52.5884)).toBeLessThan(6e-5)
    expect(Math.abs(chart.lower - 47.4116)).toBeLessThan(6e-5)
  })

  it('with weight 1 is the individuals chart of known SD', () => {
    const chart = ewmaChart([1, 2, 3], 2, 1, 1)
    expect(chart.smoothed).toEqual([1, 2, 3])
    expect(chart.upper).toBe(5)
  })

  it('takes a weight of 0.3 where none is named, and any SD from 0 on', () => {
    expect(ewmaChart([1, 2], 0, 0.5)).toEqual(ewmaChart([1, 2], 0, 0.5, 0.3))
    expect(ewmaChart([1, 2], 0, 0)).toMatchObject({ lower: 0, upper: 0 })
  })

  it('refuses a weight or an SD outside its domain', () => {
    expect(() => ewmaChart([1], 0, 1, 1.1)).toThrow(RangeError)
    expect(() => ewmaChart([Number.NaN], 0, 1)).toThrow(RangeError)
    expect(() => ewmaChart([1], Number.NaN, 1)).toThrow(RangeError)
    expect(() => ewmaChart([1], 0, 1, 0)).toThrow(RangeError)
    expect(() => ewmaChart([1], 0, -1)).toThrow(RangeError)
  })
})
