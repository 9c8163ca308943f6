import { expect, test } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { addCalibration } from '#archive/calibration/calibrations.ts'
import { requireStored } from '#archive/lists/stored.ts'
import { addSpecimen } from '#archive/specimens/specimens.ts'
import { madeCalibration } from '../storedCalibration.ts'
import { archiveInMemory, morning, session, specimenFields } from '../storedStudy.ts'

test.each(['session', 'specimen', 'calibration'] as const)('tells a %s that is stored from one that is not', (noun) => {
  const database = archiveInMemory()
  const refused = new RegExp(`There is no ${noun} 1 in this archive`)
  expect(() => requireStored(database, noun, 1)).toThrow(refused)
  beginSession(database, session)
  addSpecimen(database, specimenFields('A-1'), morning, 'bench')
  addCalibration(database, madeCalibration(), null)
  expect(() => requireStored(database, noun, 1)).not.toThrow()
})
