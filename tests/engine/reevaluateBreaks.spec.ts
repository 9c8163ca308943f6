import { expect, test } from 'vitest'
import { beginBreak } from '#archive/breaks.ts'
import { addCalibration } from '#archive/calibrations.ts'
import { addEvaluation } from '#archive/evaluations.ts'
import { beginSession } from '#archive/sessions.ts'
import type { Calibration } from '#contract/records/calibration.ts'
import { detectionMethod } from '#domain/signal/evaluateCurve.ts'
import { reevaluateBreaks } from '#engine/reevaluateBreaks.ts'
import { madeCalibration } from '../archive/storedCalibration.ts'
import { archiveInMemory, evaluationOf, header, rampAndFall, session, storeBreak } from '../archive/storedStudy.ts'

const curve = rampAndFall(2000, 600_000)

function study() {
  const database = archiveInMemory()
  const breakIds = [1, 2, 3].map(() => storeBreak(database, null, curve))
  return { database, breakIds }
}

const keepCalibration = (database: ReturnType<typeof archiveInMemory>, change: Partial<Calibration> = {}) =>
  addCalibration(database, madeCalibration(change), null).calibrationId

test('evaluates one break after the other, each beside its result in force, and writes nothing', () => {
  const { database, breakIds } = study()
  const { evaluationId } = addEvaluation(database, { ...evaluationOf(curve), breakId: 2 })
  const before = database.prepare('SELECT total_changes()').pluck().get()
  const found = [...reevaluateBreaks({ database }, { breakIds, calibrationId: null, settings: { postBreakS: 0.6 } })]
  expect(found.map(({ breakId }) => breakId)).toEqual(breakIds)
  expect(found.map(({ evaluation }) => evaluation?.besideId)).toEqual([1, evaluationId, 3])
  for (const { evaluation } of found)
    expect(evaluation).toMatchObject({ method: detectionMethod, settings: { postBreakS: 0.6 } })
  expect(database.prepare('SELECT total_changes()').pluck().get()).toBe(before)
})

test('evaluates under the calibration that is wanted, or under the one of the result in force', () => {
  const { database } = study()
  const calibrationId = keepCalibration(database)
  const order = { breakIds: [1], calibrationId, settings: {} }
  const [under] = [...reevaluateBreaks({ database }, order)]
  expect(under!.evaluation!.scale).toMatchObject({ kind: 'calibration', calibrationId })
  expect(under!.evaluation!.result.flags).toContain('above-verified-range')
  addEvaluation(database, { ...under!.evaluation!, besideId: null, madeAt: '2031-05-03T09:30:00.000Z' })
  const [again] = [...reevaluateBreaks({ database }, { ...order, calibrationId: null })]
  expect(again!.evaluation).toEqual({ ...under!.evaluation, besideId: 4 })
})

test('names what cannot be evaluated, and goes on', () => {
  const { database } = study()
  const { sessionId } = beginSession(database, session)
  const running = beginBreak(database, header(sessionId, null)).breakId
  database.exec('DROP TRIGGER curve_block_is_never_changed')
  database.exec(`UPDATE curve_block SET readings = x'00' WHERE break_id = 2`)
  const found = [
    ...reevaluateBreaks({ database }, { breakIds: [2, running, 99, 3], calibrationId: null, settings: {} }),
  ]
  expect(found.map((one) => (one.evaluation === null ? one.message : one.breakId))).toEqual([
    expect.stringMatching(/curve of break 2 is damaged/),
    expect.stringMatching(/still being captured/),
    expect.stringMatching(/no break 99/),
    3,
  ])
})

test('names breaks whose readings the calibration is not for', () => {
  const { database } = study()
  const calibrationId = keepCalibration(database, { readingUnit: 'N' })
  const [found] = [...reevaluateBreaks({ database }, { breakIds: [1], calibrationId, settings: {} })]
  expect(found).toMatchObject({ breakId: 1, evaluation: null, message: expect.stringMatching(/readings in N/) })
})

test('throws when the calibration is not there', () => {
  const { database } = study()
  expect(() => reevaluateBreaks({ database }, { breakIds: [1], calibrationId: 5, settings: {} }).next()).toThrow(
    expect.objectContaining({ code: 'not-found' }),
  )
})
