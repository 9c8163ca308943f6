import { expect, test } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { addEvaluation } from '#archive/breaks/evaluations.ts'
import { addCalibration } from '#archive/calibration/calibrations.ts'
import { reads } from '#archive/methods.ts'
import { madeEvent } from '#tests/fakes/madeEvents.ts'
import { madeCalibration } from '../storedCalibration.ts'
import { archiveInMemory, evaluationOf, morning, rampAndFall, storeBreak } from '../storedStudy.ts'

const events = [
  madeEvent({ kind: 'gap', startTimeS: 0.1, endTimeS: 0.15 }),
  madeEvent({ kind: 'clipping', startTimeS: 0.5, endTimeS: 0.8 }),
]
const word = { breakId: 1, recordedAt: morning, by: 'bench', reason: 'cracked', specimenId: null }

test('shows the flags that hold for an overruled peak beside the word itself, and those found again when it is taken back', () => {
  const database = archiveInMemory()
  const curve = rampAndFall(500, 600_000)
  storeBreak(database, null, curve)
  const made = evaluationOf(curve, { flags: ['clipped', 'over-capacity'], events })
  addEvaluation(database, { ...made, breakId: 1 })
  addDecision(database, { ...word, kind: 'peak-picked', sample: { timeS: 0.2, reading: 266_667 } })
  expect(reads.break(database, 1).summary.flags).toEqual(['over-capacity', 'peak-picked'])
  addDecision(database, { ...word, kind: 'peak-picked', sample: { timeS: 0.6, reading: 600_000 } })
  expect(reads.break(database, 1).summary.flags).toEqual(['clipped', 'over-capacity', 'peak-picked'])
  addDecision(database, { ...word, kind: 'peak-as-found' })
  expect(reads.break(database, 1).summary.flags).toEqual(['clipped', 'over-capacity'])
})

test('holds a load against the calibration that it was found with', () => {
  const database = archiveInMemory()
  const { calibrationId, assessment } = addCalibration(database, madeCalibration(), null)
  const { coefficients, verifiedRangeN } = assessment.result
  const curve = rampAndFall(500, 60_000)
  storeBreak(database, null, curve)
  const scale = { kind: 'calibration', calibrationId, coefficients } as const
  addEvaluation(database, { ...evaluationOf(curve, { peakN: 300 }), scale, breakId: 1 })
  expect(reads.break(database, 1).summary.verification).toMatchObject({ calibrationId: 1, name: 'May', verifiedRangeN })
  addDecision(database, { ...word, kind: 'peak-picked', sample: { timeS: 0.01, reading: 200 } })
  expect(reads.break(database, 1).summary.flags).toEqual(['uncalibrated', 'below-verified-range', 'peak-picked'])
})
