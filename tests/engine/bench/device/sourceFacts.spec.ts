import { expect, test } from 'vitest'
import { createVirtualSource } from '#acquisition/virtual/virtualSource.ts'
import { defaultPreferences } from '#contract/settings/settings.ts'
import { isVirtual, sourceFacts } from '#engine/bench/device/sourceFacts.ts'
import { createSteppedClock } from '#engine/core/steppedClock.ts'
import { serialChoice } from '#tests/fakes/benchEngine.ts'
import { madeCalibration } from '../../../archive/storedCalibration.ts'

const typed = { ...defaultPreferences, nPerCount: 0.02, capacityN: 5000 }
const calibration = { calibrationId: 3, ...madeCalibration() }

test('takes what the person typed for a serial device, and its claim where it sends a unit', () => {
  const { scaleFor, settings } = sourceFacts(serialChoice, null, typed, null)
  expect(settings.capacityN).toBe(5000)
  expect(scaleFor('counts')).toEqual({ kind: 'uncalibrated-scale', nPerCount: 0.02 })
  expect(scaleFor('kN')).toEqual({ kind: 'device-unit', unit: 'kN' })
})

test.each([null, 0])('knows no force of counts that are worth %s N', (nPerCount) => {
  expect(sourceFacts(serialChoice, null, { ...typed, nPerCount }, null).scaleFor('counts')).toEqual({ kind: 'none' })
})

test('puts the calibration in force before both, where it holds for that device and unit', () => {
  const { scaleFor } = sourceFacts(serialChoice, null, typed, calibration)
  expect(scaleFor('counts')).toMatchObject({ kind: 'calibration', calibrationId: 3 })
  expect(scaleFor('kN')).toEqual({ kind: 'device-unit', unit: 'kN' })
  const ofVirtual = { ...calibration, device: 'virtual' as const }
  expect(sourceFacts(serialChoice, null, typed, ofVirtual).scaleFor('counts').kind).toBe('uncalibrated-scale')
})

test('takes the data of its own cell for the virtual amplifier, whatever was typed', () => {
  const source = createVirtualSource({ scenario: 'brittle', rateHz: 80, seed: 1 }, createSteppedClock(0))
  expect(isVirtual(source)).toBe(true)
  const { scaleFor, settings } = sourceFacts(null, source, typed, null)
  expect(scaleFor('counts')).toEqual({ kind: 'uncalibrated-scale', nPerCount: source.nPerCount })
  expect(settings).toMatchObject({ capacityN: source.capacityN, endCodes: source.endCodes })
})
