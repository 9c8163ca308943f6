import { expect, test } from 'vitest'
import { addCheckWeight, checkWeights } from '#archive/calibration/checkWeights.ts'
import { storeCalibrations } from '../storedCalibration.ts'
import { archiveInMemory, morning } from '../storedStudy.ts'

const check = {
  calibrationId: 1,
  takenAt: morning,
  by: 'bench',
  weight: '10 kg no. 2',
  expectedN: 98.1,
  indicatedN: 98.05,
  sdN: 0.04,
  count: 160,
}

test('keeps checks in order, each with the calibration it was judged by', () => {
  const database = archiveInMemory()
  storeCalibrations(database)
  const stored = addCheckWeight(database, check)
  expect(stored).toEqual({ checkId: 2, ...check })
  expect(checkWeights(database, 1).rows.map(({ weight }) => weight)).toEqual(['20 kg no. 1', '10 kg no. 2'])
  expect(checkWeights(database, 2)).toEqual({ rows: [] })
})

test('refuses a check under a calibration that is not there', () => {
  expect(() => addCheckWeight(archiveInMemory(), check)).toThrow(/There is no calibration 1/)
})
