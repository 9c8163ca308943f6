import { expect, it } from 'vitest'
import { forceScale } from '#contract/calibration/forceScale.ts'

const holds = (scale: unknown) => forceScale.safeParse(scale).success

it('takes no factor that makes every reading nothing', () => {
  expect(holds({ kind: 'uncalibrated-scale', nPerCount: -0.01 })).toBe(true)
  expect(holds({ kind: 'uncalibrated-scale', nPerCount: 0 })).toBe(false)
})
it('takes no device at its word for counts, which are no force', () => {
  expect(holds({ kind: 'device-unit', unit: 'kN' })).toBe(true)
  expect(holds({ kind: 'device-unit', unit: 'counts' })).toBe(false)
})
it('wants a straight line at least of a calibration', () => {
  expect(holds({ kind: 'calibration', calibrationId: 1, coefficients: [0, 0.01] })).toBe(true)
  expect(holds({ kind: 'calibration', calibrationId: 1, coefficients: [0] })).toBe(false)
})
