import { expect, test } from 'vitest'
import { medianAbsoluteDeviation } from '#domain/numbers/medianAbsoluteDeviation.ts'

test('is that of scipy, on data that NIST/SEMATECH e-Handbook 1.3.5.17.1 prints', () => {
  // Tietjen and Moore 1972. scipy 1.17.1: stats.median_abs_deviation([...]); R 4.2.2: mad(c(...), constant = 1)
  const values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]
  expect(medianAbsoluteDeviation(values)).toBeCloseTo(0.995, 12)
})

test('is 0 where more than half of the values are the same, whatever the others', () => {
  expect(medianAbsoluteDeviation([5, 5, 5, 5, 900])).toBe(0)
})

test('refuses no values', () => {
  expect(() => medianAbsoluteDeviation([])).toThrow(RangeError)
})
