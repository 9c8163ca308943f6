import { expect, test } from 'vitest'
import type { Calibration } from '#contract/calibration/calibration.ts'
import { checkReading, expectedForceN } from '#engine/calibration/checkWeight/checkLoad.ts'
import { shopWeights } from '#tests/fakes/routineRun.ts'
import { madeCalibration } from '../../../archive/storedCalibration.ts'

const calibration: Calibration = { calibrationId: 3, ...madeCalibration() }
const weights = shopWeights([20])
const names = weights.map(({ name }) => name)
const gravity = { kind: 'typed', gMPerS2: 9.80665, halfWidthMPerS2: 0.001 } as const
const averaged = (mean: number) => ({ mean, sd: 3, count: 160, lowest: mean, highest: mean })

test('expects the force of the mass in air under the gravity that is given', () => {
  // OIML R 111: 20 kg of conventional mass in air of 1.2 kg/m3.
  expect(expectedForceN(names, weights, calibration, gravity, null)).toBeCloseTo(20 * 9.80665 * (1 - 1.2 / 8000), 9)
})

test('refuses without gravity where the calibration has none, and a weight that is not kept', () => {
  expect(() => expectedForceN(names, weights, calibration, null, null)).toThrow(/what gravity is here/)
  expect(() => expectedForceN(['7 kg'], weights, calibration, gravity, null)).toThrow(/"7 kg"/)
})

test('takes the reading at zero off, and states scatter by the slope of the curve', () => {
  const load = { calibration, weights: names, expectedN: 196, by: 'bench' }
  const kept = checkReading(load, averaged(100), averaged(20_100), '2031-05-06T08:00:00.000Z')
  const [, slopeN] = calibration.assessment.result.coefficients as [number, number]
  expect(kept).toMatchObject({ calibrationId: 3, weight: names[0], expectedN: 196, count: 160 })
  expect(kept.indicatedN).toBeCloseTo(20_000 * slopeN, 9)
  expect(kept.sdN).toBeCloseTo(3 * slopeN, 9)
})
