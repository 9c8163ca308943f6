import { describe, expect, it } from 'vitest'
import { isMonotone, polynomialAt, polynomialSlope } from '#domain/calibration/fit/polynomial.ts'

describe('polynomial', () => {
  it('has value and slope as by hand', () => {
    // 1 + 2·3 − 9 + 0.5·27 = 11.5; 2 − 2·3 + 1.5·9 = 9.5
    expect(polynomialAt([1, 2, -1, 0.5], 3)).toBe(11.5)
    expect(polynomialSlope([1, 2, -1, 0.5], 3)).toBe(9.5)
    expect(polynomialAt([], 3)).toBe(0)
    expect(polynomialSlope([7], 3)).toBe(0)
  })

  it('is monotone where its slope keeps its sign, also between the ends', () => {
    expect(isMonotone([0, 1, -0.1], 0, 4)).toBe(true)
    expect(isMonotone([0, 1, -0.1], 0, 6)).toBe(false)
    expect(isMonotone([0, -2], 0, 6)).toBe(true)
    // x³ − x rises at both ends of −1..1 and falls in the middle.
    expect(isMonotone([0, -1, 0, 1], -1, 1)).toBe(false)
    expect(isMonotone([0, 1, 0, 1], -1, 1)).toBe(true)
  })

  it('is looked at where the slope is extreme, if that lies between the ends', () => {
    // (x − 2)³ + c (x − 2): slope 3 (x − 2)² + c, least at 2.
    const about2 = (c: number, sign = 1) => [-8 - 2 * c, 12 + c, -6, 1].map((coefficient) => sign * coefficient)
    for (const sign of [1, -1]) {
      expect(isMonotone(about2(-0.01, sign), 0.5, 3.5)).toBe(false)
      expect(isMonotone(about2(-0.01, sign), 3.5, 0.5)).toBe(false)
      expect(isMonotone(about2(0.01, sign), 0.5, 3.5)).toBe(true)
      expect(isMonotone(about2(-0.01, sign), 2.5, 6)).toBe(true)
      expect(isMonotone(about2(-0.01, sign), -1, 1.5)).toBe(true)
    }
  })

  it('is not monotone where it stands still, however little it moves elsewhere', () => {
    expect(isMonotone([5], 0, 1)).toBe(false)
    for (const sign of [1, -1]) {
      // Where the slope is least: 3 (x - 1)².
      expect(isMonotone([0, 3 * sign, -3 * sign, sign], 0, 2)).toBe(false)
      expect(isMonotone([0, 0, sign], 0, 1)).toBe(false)
      expect(isMonotone([0, 0, 0.5 * sign], -0.5, 0.5)).toBe(false)
      expect(isMonotone([0, 0.5 * sign], 0, 1)).toBe(true)
    }
  })
})
