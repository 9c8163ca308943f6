import { describe, expect, it } from 'vitest'
import { lackOfFit } from '#domain/calibration/fit/lackOfFit.ts'
import { type Degree, polynomialFit } from '#domain/calibration/fit/polynomialFit.ts'
import { pontius } from './fixtures/pontius.ts'

const deflection = pontius.map(([y]) => y)
const load = pontius.map(([, x]) => x)

function deflectionOnLoad(degree: Degree) {
  return lackOfFit(polynomialFit(load, deflection, degree).residuals, load, degree + 1)!
}

function loadOnDeflection(degree: Degree) {
  return lackOfFit(polynomialFit(deflection, load, degree).residuals, load, degree + 1)!
}

describe('lack of fit against pure error', () => {
  it('rejects the straight line of the load cell case study', () => {
    // NIST/SEMATECH e-Handbook 4.6.1: F(18, 20) = 214.7469, replication SD 0.000214726570 (from memory).
    // R 4.2.2, more digits: anova(lm(y ~ poly(z, 1)), lm(y ~ factor(x))).
    const test = deflectionOnLoad(1)
    expect(test.f).toBeCloseTo(214.746923654, 7)
    expect(test.lackDegreesOfFreedom).toBe(18)
    expect(test.pureDegreesOfFreedom).toBe(20)
    expect(test.pureErrorSD).toBeCloseTo(0.00021472657, 11)
    expect(test.pValue / 5.50371738173e-19).toBeCloseTo(1, 7)
  })

  it('accepts its quadratic', () => {
    // e-Handbook 4.6.1: F(17, 20) = 0.8107 at the 33.3818 % point (from memory); R as above with poly(z, 2) and poly(z, 3).
    const test = deflectionOnLoad(2)
    expect(test.f).toBeCloseTo(0.810723900314, 8)
    expect(1 - test.pValue).toBeCloseTo(0.333818, 4)
    expect(test.pValue).toBeCloseTo(0.666172944804, 8)
    expect(deflectionOnLoad(3).f).toBeCloseTo(0.793771419458, 8)
  })

  it('tests force on reading against the repeats at each force', () => {
    // R: m <- lm(load ~ poly(y, d)); e <- resid(m); eb <- ave(e, factor(load)); pe <- sum((e - eb)^2) / 20;
    //    lf <- sum(eb^2) / (20 - d - 1); lf / pe; pf(lf / pe, 20 - d - 1, 20, lower = FALSE); sqrt(pe)
    const line = loadOnDeflection(1)
    expect(line.f).toBeCloseTo(214.749401924, 7)
    expect(line.pureErrorSD).toBeCloseTo(297.35955885, 7)
    const quadratic = loadOnDeflection(2)
    expect(quadratic.f).toBeCloseTo(0.768404209764, 8)
    expect(quadratic.pValue).toBeCloseTo(0.70596711807, 8)
    expect(loadOnDeflection(3).f).toBeCloseTo(0.791455054891, 8)
  })

  it('cannot be made without repeats or with a coefficient for every step', () => {
    expect(lackOfFit([0.1, -0.2, 0.1], [1, 2, 3], 2)).toBeNull()
    expect(lackOfFit([0.1, -0.1, 0.1, -0.1], [1, 1, 2, 2], 2)).toBeNull()
  })

  it('is beyond doubt when repeats agree to the digit and the curve misses them, and absent when it does not', () => {
    expect(lackOfFit([1, 1, -2, -2, 1, 1], [1, 1, 2, 2, 3, 3], 2)!.pValue).toBeLessThan(1e-12)
    expect(lackOfFit([0, 0, 0, 0, 0, 0], [1, 1, 2, 2, 3, 3], 2)!.pValue).toBe(1)
  })

  it('needs one repeat and one coefficient at least', () => {
    // By hand, the mean of 0, 2, 4, 6 taken off: pure error of the pair (-3, -1) 2 with 1 degree of freedom; lack of the three
    // steps 2 · 4 + 1 + 9 = 18 with 2.
    const test = lackOfFit([-3, -1, 1, 3], [1, 1, 2, 3], 1)!
    expect(test).toMatchObject({ lackDegreesOfFreedom: 2, pureDegreesOfFreedom: 1, pureErrorSD: Math.sqrt(2) })
    expect(test.f).toBeCloseTo(4.5, 12)
  })

  it('has a figure that is finite whatever the repeats', () => {
    const exact = (half: number) => lackOfFit([half, half, -2 * half, -2 * half, half, half], [1, 1, 2, 2, 3, 3], 2)!.f
    expect(exact(0.1)).toBe(Number.MAX_VALUE)
    expect(exact(1)).toBe(Number.MAX_VALUE)
    expect(exact(0)).toBe(0)
  })

  it('refuses residuals without steps', () => {
    expect(() => lackOfFit([1, 2], [1], 1)).toThrow(RangeError)
    expect(() => lackOfFit([1], [1], 0)).toThrow(RangeError)
  })
})
