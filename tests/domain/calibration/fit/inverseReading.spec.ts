import { describe, expect, it } from 'vitest'
import { inverseReading } from '#domain/calibration/fit/inverseReading.ts'
import { polynomialFit } from '#domain/calibration/fit/polynomialFit.ts'
import { tQuantile } from '#domain/numbers/distributions/studentT.ts'
import { pontius } from './fixtures/pontius.ts'

const fit = polynomialFit(
  pontius.map(([, load]) => load),
  pontius.map(([y]) => y),
  2,
)
const range = [150_000, 3_000_000] as const

describe('inverse reading', () => {
  it('finds the load of the handbook case study', () => {
    // NIST/SEMATECH e-Handbook 4.6.1: deflection 1.239722 -> 1,705,106 (printed), 1,705,105.5689 with more digits (from memory).
    expect(Math.abs(inverseReading(fit, 1.239722, range).x - 1_705_105.5689)).toBeLessThan(1e-3)
  })

  it('has the interval that R gives', () => {
    // R 4.2.2: uniroot of predict(q, ..., interval = "prediction") - 1.239722 for each bound, q the quadratic in load / 1e6.
    const { lower, upper } = inverseReading(fit, 1.239722, range)
    expect(Math.abs(lower! - 1_704_513.37294)).toBeLessThan(0.05)
    expect(Math.abs(upper! - 1_705_697.76362)).toBeLessThan(0.05)
  })

  it('is Fieller’s interval for a line', () => {
    // JCGM 100 H.3 data, b = -0.1635, confidence 80 %. R: uniroot of predict(lm(b ~ t), ..., level = .8) + .1635.
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511]
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16]
    const line = polynomialFit(t, b, 1)
    const found = inverseReading(line, -0.1635, [21.521, 26.511], 0.8)
    expect(found.x).toBeCloseTo(23.5294809678, 8)
    expect(found.lower).toBeCloseTo(20.8582503589, 6)
    expect(found.upper).toBeCloseTo(25.9916802547, 6)
    // Fieller's closed form, centred: x - x̄ = d / (1 - g) ± ..., g = t² s² / (b² Sxx).
    const mean = t.reduce((sum, value) => sum + value, 0) / t.length
    const sxx = t.reduce((sum, value) => sum + (value - mean) ** 2, 0)
    const [, slope] = line.coefficients
    const factor = tQuantile(0.9, 9)
    const g = (factor * line.residualSD!) ** 2 / (slope! ** 2 * sxx)
    const d = found.x - mean
    const half = ((factor * line.residualSD!) / slope!) * Math.sqrt((1 + 1 / t.length) * (1 - g) + d ** 2 / sxx)
    expect(found.lower! - mean).toBeCloseTo((d - half) / (1 - g), 8)
    expect(found.upper! - mean).toBeCloseTo((d + half) / (1 - g), 8)
  })

  it('leaves an end open where the data do not close it', () => {
    const noisy = polynomialFit([0, 1, 2, 3], [0, 2, 1, 3], 1)
    const found = inverseReading(noisy, 1.5, [0, 3], 0.99)
    expect(found.x).toBeCloseTo(1.5, 10)
    expect(found.lower).toBeNull()
    expect(found.upper).toBeNull()
  })

  it('narrows when several readings are averaged', () => {
    const one = inverseReading(fit, 1.239722, range)
    const ten = inverseReading(fit, 1.239722, range, 0.95, 10)
    expect(ten.upper! - ten.lower!).toBeLessThan(0.5 * (one.upper! - one.lower!))
  })

  it('refuses what the curve does not reach', () => {
    expect(() => inverseReading(fit, 3, range)).toThrow(RangeError)
    expect(() => inverseReading(fit, 1, range, 1)).toThrow(RangeError)
    expect(() => inverseReading(polynomialFit([0, 1], [0, 1], 1), 0.5, [0, 1])).toThrow(RangeError)
    expect(() => inverseReading(polynomialFit([0, 1, 2, 3], [0, 2, 2, 0.1], 2), 1, [0, 3])).toThrow(RangeError)
  })
})
