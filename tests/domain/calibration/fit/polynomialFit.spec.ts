import { describe, expect, it } from 'vitest'
import { polynomialFit } from '#domain/calibration/fit/polynomialFit.ts'
import { pontius } from './fixtures/pontius.ts'

const digits = (value: number | null | undefined, expected: number) =>
  -Math.log10(Math.abs(value! / expected - 1) + 1e-16)
const deflection = pontius.map(([y]) => y)
const load = pontius.map(([, x]) => x)

describe('polynomial fit', () => {
  it('agrees with the certified values of NIST StRD Pontius to 11 digits and more', () => {
    // NIST StRD Pontius, certified: estimates, standard deviations, residual SD, R².
    const fit = polynomialFit(load, deflection, 2)
    expect(digits(fit.coefficients[0], 0.673565789473684e-3)).toBeGreaterThan(11)
    expect(digits(fit.coefficients[1], 0.732059160401003e-6)).toBeGreaterThan(11)
    expect(digits(fit.coefficients[2], -0.316081871345029e-14)).toBeGreaterThan(11)
    expect(digits(fit.standardErrors[0], 0.107938612033077e-3)).toBeGreaterThan(11)
    expect(digits(fit.standardErrors[1], 0.157817399981659e-9)).toBeGreaterThan(11)
    expect(digits(fit.standardErrors[2], 0.486652849992036e-16)).toBeGreaterThan(11)
    expect(digits(fit.residualSD, 0.205177424076185e-3)).toBeGreaterThan(11)
    expect(digits(fit.rSquared, 0.999999900178537)).toBeGreaterThan(14)
    expect(fit.degreesOfFreedom).toBe(37)
    expect(digits(fit.residualSD! ** 2, 0.420977753505385e-7)).toBeGreaterThan(11)
  })

  it('agrees with the straight line of the handbook case study', () => {
    // NIST/SEMATECH e-Handbook 4.6.1: 0.00614968421 (0.000713205), 7.22102581e-7 (3.9691e-10), residual SD 0.00217127 (from memory);
    // more digits: exact rational arithmetic (Python fractions, normal equations).
    const fit = polynomialFit(load, deflection, 1)
    expect(digits(fit.coefficients[0], 0.006149684210526316)).toBeGreaterThan(11)
    expect(digits(fit.coefficients[1], 7.221025814536341e-7)).toBeGreaterThan(11)
    expect(digits(fit.standardErrors[0], 0.0007132051674656124)).toBeGreaterThan(11)
    expect(digits(fit.standardErrors[1], 3.9691478040442475e-10)).toBeGreaterThan(11)
    expect(digits(fit.residualSD, 0.0021712725960567505)).toBeGreaterThan(11)
    expect(digits(fit.rSquared, 0.9999885191152188)).toBeGreaterThan(14)
  })

  it('agrees with exact arithmetic in the other role, load by deflection, degrees 2 and 3', () => {
    // Exact rational arithmetic (Python fractions, normal equations), Pontius data with the roles exchanged.
    const quadratic = polynomialFit(deflection, load, 2)
    ;[-851.209800710622, 1365678.8549434931, 8394.392804252955].forEach((expected, k) => {
      expect(digits(quadratic.coefficients[k], expected)).toBeGreaterThan(11)
    })
    ;[148.9703485105554, 300.43069845153383, 127.94044291991865].forEach((expected, k) => {
      expect(digits(quadratic.standardErrors[k], expected)).toBeGreaterThan(11)
    })
    expect(digits(quadratic.residualSD, 281.2968996979369)).toBeGreaterThan(11)
    const cubic = polynomialFit(deflection, load, 3)
    ;[-742.5109529950455, 1365169.7853560904, 8938.670011853224, -159.14960664553863].forEach((expected, k) => {
      expect(digits(cubic.coefficients[k], expected)).toBeGreaterThan(9)
    })
    ;[220.9262789842737, 817.3458190701854, 821.9116268167965, 237.35734934667263].forEach((expected, k) => {
      expect(digits(cubic.standardErrors[k], expected)).toBeGreaterThan(10)
    })
  })

  it('keeps digits for counts on a large zero, where plain powers would keep none', () => {
    // Exact rational arithmetic (Python fractions): degree 3 on 24-bit counts with a zero of 8,000,000.
    const counts = Array.from({ length: 12 }, (_, i) => 8_000_000 + 311 * i * i + 1777 * i)
    const forces = counts.map((value, i) => (value - 8_000_000) / 100 + (((i * 7) % 5) - 2) / 1000)
    const fit = polynomialFit(counts, forces, 3)
    ;[-104166.6636170332, 0.019023358207681976, -1.1230435662068426e-9, 4.6590987193787256e-17].forEach(
      (expected, k) => {
        expect(digits(fit.coefficients[k], expected)).toBeGreaterThan(8)
      },
    )
    ;[57778.63691838573, 0.021591412557944032, 2.6895052088742396e-9, 1.1167122840590612e-16].forEach((expected, k) => {
      expect(digits(fit.standardErrors[k], expected)).toBeGreaterThan(8)
    })
    expect(digits(fit.residualSD, 0.0016692895113731478)).toBeGreaterThan(9)
  })

  it('agrees with JCGM 100 H.3', () => {
    // JCGM 100 H.3: data as in the document; R 4.2.2 lm(b ~ I(t - 20)) to 12 digits; the document prints (from memory)
    // -0.1712 (0.0029), 0.00218 (0.00067), r -0.930, s 0.0035.
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511]
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16]
    const fit = polynomialFit(
      t.map((value) => value - 20),
      b,
      1,
    )
    expect(digits(fit.coefficients[0], -0.17120379013135)).toBeGreaterThan(11)
    expect(digits(fit.coefficients[1], 0.00218269773988728)).toBeGreaterThan(11)
    expect(digits(fit.standardErrors[0], 0.002877597835159957)).toBeGreaterThan(11)
    expect(digits(fit.standardErrors[1], 0.000667938773227833)).toBeGreaterThan(11)
    expect(digits(fit.residualSD, 0.00349756396351)).toBeGreaterThan(10)
    const correlation = fit.covariance![0]![1]! / (fit.standardErrors[0]! * fit.standardErrors[1]!)
    expect(digits(correlation, -0.930429603093)).toBeGreaterThan(10)
    expect(fit.degreesOfFreedom).toBe(9)
  })

  it('agrees with NIST StRD NoInt1 through zero', () => {
    // NIST StRD NoInt1 (certified, from memory; exact rational arithmetic gives the same):
    // B1 2.07438016528926, SD 0.0165289256198347, residual SD 3.56753034006338, R² 0.999365492298663.
    const x = Array.from({ length: 11 }, (_, i) => 60 + i)
    const y = Array.from({ length: 11 }, (_, i) => 130 + i)
    const fit = polynomialFit(x, y, 1, true)
    expect(fit.coefficients[0]).toBe(0)
    expect(fit.standardErrors[0]).toBe(0)
    expect(digits(fit.coefficients[1], 2.07438016528926)).toBeGreaterThan(13)
    expect(digits(fit.standardErrors[1], 0.0165289256198347)).toBeGreaterThan(12)
    expect(digits(fit.residualSD, 3.56753034006338)).toBeGreaterThan(12)
    expect(digits(fit.rSquared, 0.999365492298663)).toBeGreaterThan(13)
    expect(fit.degreesOfFreedom).toBe(10)
  })

  it('agrees with exact arithmetic for a curve of degree 2 through zero', () => {
    // Exact rational arithmetic (Python fractions) on the Pontius data without a constant.
    const fit = polynomialFit(load, deflection, 2, true)
    expect(digits(fit.coefficients[1], 7.329344756900174e-7)).toBeGreaterThan(12)
    expect(digits(fit.coefficients[2], -3.398031528901493e-15)).toBeGreaterThan(12)
    expect(digits(fit.standardErrors[1], 1.0224390800173996e-10)).toBeGreaterThan(11)
    expect(digits(fit.standardErrors[2], 4.295545453905509e-17)).toBeGreaterThan(11)
    expect(digits(fit.residualSD, 0.0002900519216132215)).toBeGreaterThan(11)
  })

  it('does not depend on the order of the data, and follows a change of unit', () => {
    const fit = polynomialFit(load, deflection, 2)
    const other = polynomialFit(
      load.toReversed().map((value) => value / 1000),
      deflection.toReversed(),
      2,
    )
    expect(digits(other.coefficients[1], fit.coefficients[1]! * 1000)).toBeGreaterThan(12)
    expect(digits(other.coefficients[2], fit.coefficients[2]! * 1e6)).toBeGreaterThan(10)
  })

  it('has no standard errors without degrees of freedom', () => {
    const fit = polynomialFit([0, 1, 2], [1, 3, 9], 2)
    // By hand: 1 + 2 x².
    expect(fit.coefficients.map((value) => Math.round(value * 1e12) / 1e12 + 0)).toEqual([1, 0, 2])
    expect(fit.residualSD).toBeNull()
    expect(fit.standardErrors).toEqual([null, null, null])
    expect(fit.covariance).toBeNull()
  })

  it('is centred on the mean and scaled to the farthest point, or scaled alone through zero', () => {
    const { centred } = polynomialFit([10, 10.1, 10.5], [1, 2, 3], 1)
    expect(centred.centre).toBeCloseTo(10.2, 12)
    expect(centred.scale).toBeCloseTo(0.3, 12)
    expect(polynomialFit([10, 10.1, 10.5], [1, 2, 3], 1, true).centred).toMatchObject({ centre: 0, scale: 10.5 })
  })

  it('has an error with one degree of freedom, and R² whatever the size of the values, by hand', () => {
    // The line through (0, 0), (1, h), (2, 0) is h/3; the squares left are 2 h²/3.
    expect(polynomialFit([0, 1, 2], [0, 1, 0], 1).residualSD).toBeCloseTo(Math.sqrt(2 / 3), 12)
    // That through (0, 0), (1, h), (2, h) has slope h/2: 2 (h/2)² of 2 h²/3 is 0.75.
    for (const h of [100, 0.1]) expect(polynomialFit([0, 1, 2], [0, h, h], 1).rSquared).toBeCloseTo(0.75, 12)
    expect(polynomialFit([0, 1, 2], [7, 7, 7], 1).rSquared).toBe(1)
  })

  it('has the covariance of the line about its centre: s²/n and s²/n for points at −1, 0, 1 twice', () => {
    const { centred, residualSD } = polynomialFit([4, 6, 8, 4, 6, 8], [0, 1, 0, 0, 1, 0], 1)
    // Σ u² = 4 of 6 points.
    expect(centred.covariance![0]![0]).toBeCloseTo(residualSD! ** 2 / 6, 12)
    expect(centred.covariance![1]![1]).toBeCloseTo(residualSD! ** 2 / 4, 12)
    expect(centred.covariance![0]![1]).toBeCloseTo(0, 12)
    expect(polynomialFit([0, 1], [0, 1], 1).centred.covariance).toBeNull()
  })

  it('goes through zero where all readings are one', () => {
    for (const x of [1, -1]) expect(polynomialFit([x, x], [2, 3], 1, true).coefficients[1]).toBeCloseTo(2.5 * x, 12)
  })

  it('refuses data that cannot carry the degree', () => {
    expect(() => polynomialFit([1, 2], [1, Number.NaN], 1)).toThrow(RangeError)
    expect(() => polynomialFit([1, 1, 2], [1, 2, 3], 2)).toThrow(RangeError)
    expect(() => polynomialFit([0, 0], [0, 1], 1, true)).toThrow(RangeError)
    expect(() => polynomialFit([1, 2], [1], 1)).toThrow(RangeError)
    expect(() => polynomialFit([1, Number.NaN], [1, 2], 1)).toThrow(RangeError)
  })
})
