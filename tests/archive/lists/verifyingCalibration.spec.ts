import { expect, test } from 'vitest'
import { addCalibration, calibration } from '#archive/calibration/calibrations.ts'
import { verifyingCalibration } from '#archive/lists/verifyingCalibration.ts'
import { verificationOf } from '#domain/calibration/verificationOf.ts'
import { madeCalibration } from '../storedCalibration.ts'
import { archiveInMemory } from '../storedStudy.ts'

test('says of a force what the whole calibration says of it', () => {
  const database = archiveInMemory()
  addCalibration(database, madeCalibration(), null)
  for (const forceN of [100, 400, 900, null])
    expect(verificationOf(verifyingCalibration(database, 1), forceN)).toEqual(
      verificationOf(calibration(database, 1), forceN),
    )
})

test('is not found where there is none', () => {
  expect(() => verifyingCalibration(archiveInMemory(), 1)).toThrow('There is no calibration 1 in this archive.')
})
