import { describe, expect, it } from 'vitest'
import { tCritical, tProbability, tQuantile, tTwoSided } from '#domain/numbers/distributions/studentT.ts'

const relativeError = (value: number, expected: number) => Math.abs(value / expected - 1)

describe("Student's t distribution", () => {
  // R 4.2.2: pt(2.5, 3); pt(-8, 5); pt(-1.2, 0.7). Relative tolerance 1e-11.
  it.each([
    [2.5, 3, 0.9561466764959672],
    [-8, 5, 0.0002464533302862219],
    [-1.2, 0.7, 0.2500376869223925],
  ])('probability below %d with %d degrees of freedom agrees with R pt', (t, df, expected) => {
    expect(relativeError(tProbability(t, df), expected)).toBeLessThan(1e-11)
  })

  it('gives both sides together', () => {
    // R: 2 * pt(-2, 21)
    expect(relativeError(tTwoSided(2, 21), 0.05860001204871041)).toBeLessThan(1e-11)
    expect(tTwoSided(-2, 21)).toBe(tTwoSided(2, 21))
  })

  // R: qt(.975, 1); qt(.975, 9); qt(.995, 16); qt(.95445, 16.656); qt(1e-9, 4); qt(.975, 1e5). Relative tolerance 1e-11.
  // 2.92 for 16 degrees of freedom and 99 % is also what JCGM 100 H.1.6 prints (from memory).
  it.each([
    [0.975, 1, 12.70620473617469],
    [0.975, 9, 2.262157162798205],
    [0.995, 16, 2.920781622425099],
    [0.95445, 16.656, 1.793310623779094],
    [1e-9, 4, -234.027610406119],
    [0.975, 1e5, 1.959987707534609],
  ])('quantile %d with %d degrees of freedom agrees with R qt', (p, df, expected) => {
    expect(relativeError(tQuantile(p, df), expected)).toBeLessThan(1e-11)
  })

  it('is the normal distribution for infinitely many degrees of freedom', () => {
    // R: qnorm(.99), pnorm(1.2)
    expect(tQuantile(0.99, Number.POSITIVE_INFINITY)).toBeCloseTo(2.326347874040841, 12)
    expect(tProbability(1.2, Number.POSITIVE_INFINITY)).toBeCloseTo(0.8849303297782918, 13)
  })

  // NIST/SEMATECH e-Handbook 1.3.6.7.2, critical values of Student's t for 0.90, 0.95, 0.975 and 0.995 (read on both sides), to
  // the three decimals that it prints.
  it.each([
    [0.8, 10, 1.372],
    [0.9, 20, 1.725],
    [0.95, 1, 12.706],
    [0.95, 9, 2.262],
    [0.95, 30, 2.042],
    [0.99, 10, 3.169],
    [0.99, 100, 2.626],
    [0.95, Number.POSITIVE_INFINITY, 1.96],
  ])(
    'an interval of %d with %d degrees of freedom reaches as far as the printed table says',
    (confidence, df, printed) => {
      expect(tCritical(confidence, df)).toBeCloseTo(printed, 3)
    },
  )

  it('refuses what it cannot answer', () => {
    expect(() => tCritical(95, 9)).toThrow(RangeError)
    expect(() => tProbability(1, 0)).toThrow(RangeError)
    expect(() => tQuantile(-0.1, 3)).toThrow(RangeError)
  })
})
