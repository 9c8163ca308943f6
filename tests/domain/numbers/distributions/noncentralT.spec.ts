import { describe, expect, it } from 'vitest'
import {
  noncentralTProbability,
  noncentralTQuantile,
  noncentralTUpperTail,
} from '#domain/numbers/distributions/noncentralT.ts'
import { normalQuantile } from '#domain/numbers/distributions/normal.ts'
import { tProbability } from '#domain/numbers/distributions/studentT.ts'

const relativeError = (value: number, expected: number) => Math.abs(value / expected - 1)

describe('noncentral t', () => {
  // mpmath 1.3.0, 30 digits, quadrature of Phi(t s - delta) over the density of s: lower and upper tail. R's pt(ncp) has six digits.
  it.each([
    [2.5, 1, 1, 0.68448936659768, 0.31551063340232],
    [0.3, 1, 0, 0.59277357907774, 0.40722642092226],
    [-1, 2, 1, 0.042056263743705, 0.9579437362563],
    [12, 3, 5, 0.90763185697046, 0.09236814302954],
    [5.2, 9, 5.2, 0.45631467747011, 0.54368532252989],
    [30, 4, 20, 0.77555780177911, 0.22444219822089],
    [1.96, 2e5, 3, 0.14917054130736, 0.85082945869264],
    [-2, 18, 2.7, 4.2430249647627e-6, 0.99999575697504],
    [50, 60, 40, 0.98437935933002, 0.015620640669977],
    [0.001, 1.5, 0.2, 0.42107431755269, 0.57892568244731],
  ])('%d with %d degrees of freedom and noncentrality %d has the tails of mpmath', (t, df, delta, lower, upper) => {
    expect(relativeError(noncentralTProbability(t, df, delta), lower)).toBeLessThan(1e-12)
    expect(relativeError(noncentralTUpperTail(t, df, delta), upper)).toBeLessThan(1e-12)
  })

  it('is Student t without a noncentrality, and normal with endless degrees of freedom', () => {
    expect(relativeError(noncentralTProbability(-1.3, 7, 0), tProbability(-1.3, 7))).toBeLessThan(1e-13)
    expect(noncentralTProbability(1.96, Number.POSITIVE_INFINITY, 1.96)).toBe(0.5)
  })

  // Lower 5 % limit with 75 % confidence, as ASTM D2915 prints it (from memory), R 4.2.2 and scipy give it:
  // k = qt(0.75, n - 1, qnorm(0.95) sqrt(n)) / sqrt(n); the last two at 95 %/95 % and 99 %/90 %.
  it.each([
    [5, 0.75, 0.95, 2.46338],
    [10, 0.75, 0.95, 2.10367],
    [3, 0.95, 0.95, 7.6559],
    [43, 0.99, 0.9, 1.87395],
  ])('gives the tolerance factor of %d blocks at confidence %d for a share of %d', (n, confidence, content, k) => {
    const found = noncentralTQuantile(confidence, n - 1, normalQuantile(content) * Math.sqrt(n)) / Math.sqrt(n)
    expect(found).toBeCloseTo(k, 5)
  })

  it.each([
    [1e-6, 4, 3],
    [0.2, 1, -2],
    [0.999, 12, 30],
  ])('has at its quantile of %d that probability', (p, df, delta) => {
    expect(relativeError(noncentralTProbability(noncentralTQuantile(p, df, delta), df, delta), p)).toBeLessThan(1e-9)
  })

  it('refuses what is no degree of freedom, noncentrality or probability', () => {
    expect(() => noncentralTProbability(1, 0, 1)).toThrow(RangeError)
    expect(() => noncentralTProbability(1, 3, Number.POSITIVE_INFINITY)).toThrow(RangeError)
    expect(() => noncentralTProbability(Number.NaN, 3, 1)).toThrow(RangeError)
    for (const p of [0, 1]) expect(() => noncentralTQuantile(p, 3, 1)).toThrow(RangeError)
  })
})
