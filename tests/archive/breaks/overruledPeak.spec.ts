import { expect, test } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { addEvaluation } from '#archive/breaks/evaluations.ts'
import { overruledPeakN } from '#archive/breaks/overruledPeak.ts'
import type { ForceScale, ReadingUnit } from '#contract/calibration/forceScale.ts'
import { archiveInMemory, evaluationOf, morning, rampAndFall, storeBreak } from '../storedStudy.ts'

const curve = rampAndFall(500, 600_000)
const word = { breakId: 1, recordedAt: morning, by: 'bench', reason: 'cracked', specimenId: null }
const sample = { timeS: 0.2, reading: 266_667 }

function study() {
  const database = archiveInMemory()
  storeBreak(database, null, curve)
  addDecision(database, { ...word, kind: 'peak-picked', sample })
  return database
}

test.each<[string, ForceScale, ReadingUnit, number | null]>([
  ['no scale', { kind: 'none' }, 'counts', null],
  ['newtons a count', { kind: 'uncalibrated-scale', nPerCount: 0.01 }, 'counts', 2666.67 - 5],
  // 1 lbf = 4.4482216152605 N exactly (NIST SP 811, table of exact conversion factors).
  ['the unit of the device', { kind: 'device-unit', unit: 'lbf' }, 'counts', 266_667 * 4.4482216152605 - 5],
  [
    'a curve',
    { kind: 'calibration', calibrationId: 1, coefficients: [-1, 0.01, 1e-9] },
    'counts',
    -1 + 2666.67 + 71.111_288_889 - 5,
  ],
])('reads the sample under the scale and zero in force: %s', (_name, scale, _unit, peakN) => {
  const database = study()
  const { evaluationId } = addEvaluation(database, {
    ...evaluationOf(curve, { peakN: null }),
    ...{ scale, tareOffset: 5, breakId: 1 },
  })
  const overruled = overruledPeakN(database, 1, evaluationId)
  if (peakN === null) expect(overruled).toEqual({ peakN: null })
  else expect(overruled!.peakN).toBeCloseTo(peakN, 6)
})

test('lets the found peak stand after that word, and without a result', () => {
  const database = study()
  addDecision(database, { ...word, kind: 'peak-as-found' })
  expect(overruledPeakN(database, 2, 1)).toBeNull()
  expect(overruledPeakN(database, 1, null)).toBeNull()
})

test('knows no decision that is not stored', () => {
  expect(() => overruledPeakN(study(), 9, 1)).toThrow(RangeError)
})
