import { expect, test } from 'vitest'
import { shearStrengthMPa } from '#domain/strength.ts'

test('gives one pound-force on one square inch as NIST gives the psi', () => {
  // NIST SP 811 (2008), appendix B.8: 1 psi (lbf/in2) = 6.894 757 E+03 Pa; 1 in = 25.4 mm; 1 lbf = 4.448 222 N.
  expect(shearStrengthMPa(4.4482216152605, 25.4 * 25.4)).toBeCloseTo(6.894757e-3, 9)
})

test('grows with the load and falls with the area', () => {
  expect(shearStrengthMPa(6000, 600)).toBe(10)
  expect(shearStrengthMPa(0, 600)).toBe(0)
})

test('refuses an area that is none and a load that is no number', () => {
  expect(() => shearStrengthMPa(1, 0)).toThrow(RangeError)
  expect(() => shearStrengthMPa(1, -600)).toThrow(RangeError)
  expect(() => shearStrengthMPa(Number.NaN, 600)).toThrow(RangeError)
})
