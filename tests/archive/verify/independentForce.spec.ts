import { expect, test } from 'vitest'
import { independentForceN } from '#archive/verify/independentForce.ts'

test('knows no force without a scale', () => {
  expect(independentForceN(5, { kind: 'none' }, 'counts')).toBeNull()
})

test('multiplies by a typed factor', () => {
  expect(independentForceN(200, { kind: 'uncalibrated-scale', nPerCount: -0.5 }, 'counts')).toBe(-100)
})

// NIST SP 811 (2008), appendix B.8: lbf 4.448222 E+00 N, kgf 9.80665 E+00 N.
test.each([
  ['N', 1, 6],
  ['kN', 1000, 6],
  ['lbf', 4.448222, 6],
  ['kgf', 9.80665, 6],
  ['kg', 9.80665, 6],
  ['g', 0.00980665, 8],
] as const)('takes one %s for what the standard says', (unit, newtons, digits) => {
  expect(independentForceN(1, { kind: 'device-unit', unit }, 'counts')).toBeCloseTo(newtons, digits)
})

test('believes the unit that the readings carry before the one chosen for them', () => {
  expect(independentForceN(2, { kind: 'device-unit', unit: 'N' }, 'kN')).toBe(2000)
})

test('evaluates a calibration from its lowest coefficient on', () => {
  // 1 + 2 x 3 + 4 x 9 = 43
  expect(independentForceN(3, { kind: 'calibration', calibrationId: 1, coefficients: [1, 2, 4] }, 'counts')).toBe(43)
})
