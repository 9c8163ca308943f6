import { closeSync, openSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { openReader, readerOf } from '#archive/archiveReader.ts'
import { beginSession } from '#archive/bench/sessions.ts'
import { beginBreak } from '#archive/breaks/breaks.ts'
import { addEvaluation } from '#archive/breaks/evaluations.ts'
import { addCalibration } from '#archive/calibration/calibrations.ts'
import { openHere } from '#archive/openHere.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import { detectionMethod } from '#domain/signal/loading/evaluateCurve.ts'
import { reevaluateBreaks } from '#engine/reevaluation/reevaluateBreaks.ts'
import { madeCalibration } from '../../archive/storedCalibration.ts'
import {
  archiveInMemory,
  evaluationOf,
  header,
  morning,
  rampAndFall,
  session,
  storeBreak,
  temporaryFolder,
} from '../../archive/storedStudy.ts'

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
  const found = [
    ...reevaluateBreaks(readerOf(database, 'study.breakledger'), {
      breakIds,
      calibrationId: null,
      settings: { postBreakS: 0.6 },
    }),
  ]
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
  const [under] = [...reevaluateBreaks(readerOf(database, 'study.breakledger'), order)]
  expect(under!.evaluation!.scale).toMatchObject({ kind: 'calibration', calibrationId })
  expect(under!.evaluation!.result.flags).toContain('above-verified-range')
  addEvaluation(database, { ...under!.evaluation!, besideId: null, madeAt: '2031-05-03T09:30:00.000Z' })
  const [again] = [...reevaluateBreaks(readerOf(database, 'study.breakledger'), { ...order, calibrationId: null })]
  expect(again!.evaluation).toEqual({ ...under!.evaluation, besideId: 4 })
})

test('names what cannot be evaluated, and goes on', () => {
  const { database } = study()
  const { sessionId } = beginSession(database, session)
  const running = beginBreak(database, header(sessionId, null)).breakId
  database.exec('DROP TRIGGER curve_block_is_never_changed')
  database.exec(`UPDATE curve_block SET readings = x'00' WHERE break_id = 2`)
  const found = [
    ...reevaluateBreaks(readerOf(database, 'study.breakledger'), {
      breakIds: [2, running, 99, 3],
      calibrationId: null,
      settings: {},
    }),
  ]
  expect(found.map((one) => (one.evaluation === null ? one.message : one.breakId))).toEqual([
    expect.stringMatching(/curve of break 2 is damaged/),
    expect.stringMatching(/still being recorded/),
    expect.stringMatching(/no break 99/),
    3,
  ])
})

test('names a break whose page is damaged, as an archive that is damaged, and goes on', () => {
  const path = join(temporaryFolder(), 'study.breakledger')
  const written = openHere({ path, mode: 'write', program: 'test', instant: morning })
  // Noise, so that each curve is long when it is packed and goes on over pages of its own.
  const long = rampAndFall(6000, 600_000)
  const readings = long.readings.map((reading, i) => reading + ((i * i * 7919) % 50_021))
  for (let i = 0; i < 3; i++) storeBreak(written.database, null, { ...long, readings })
  const inSecond = written.database.prepare<[], { pageno: number }>(
    "SELECT pageno FROM dbstat WHERE name = 'curve_block' AND pagetype = 'overflow' AND path LIKE '%/001+000000'",
  )
  const { pageno } = inSecond.get()!
  const pageSize = Number(written.database.pragma('page_size', { simple: true }))
  written.close()
  const file = openSync(path, 'r+')
  writeSync(file, Buffer.alloc(16, 0xff), 0, 16, (pageno - 1) * pageSize)
  closeSync(file)

  const archive = openReader({ path, program: 'test', instant: morning })
  onTestFinished(() => archive.close())
  const found = [...reevaluateBreaks(archive, { breakIds: [1, 2, 3], calibrationId: null, settings: {} })]
  expect(found.map((one) => (one.evaluation === null ? one.message : one.breakId))).toEqual([
    1,
    expect.stringMatching(/^The archive .*study\.breakledger is damaged/),
    3,
  ])
})

test('names a break whose record no longer fits its form, and goes on', () => {
  const { database, breakIds } = study()
  database.exec('DROP TRIGGER evaluation_is_never_changed')
  database.exec(`UPDATE evaluation SET events = '{"kind":"gap"}' WHERE break_id = 2`)
  const found = [
    ...reevaluateBreaks(readerOf(database, 'study.breakledger'), { breakIds, calibrationId: null, settings: {} }),
  ]
  expect(found.map((one) => (one.evaluation === null ? one.message : one.breakId))).toEqual([
    1,
    expect.stringMatching(/^A record in the archive .* at result.events\.$/),
    3,
  ])
})

test('throws on what is no fault of one break', () => {
  const { database } = study()
  database.exec('DROP TABLE break_end')
  const found = reevaluateBreaks(readerOf(database, 'study.breakledger'), {
    breakIds: [1],
    calibrationId: null,
    settings: {},
  })
  expect(() => found.next()).toThrow(/no such table/)
})

test('names breaks whose readings the calibration is not for', () => {
  const { database } = study()
  const calibrationId = keepCalibration(database, { readingUnit: 'N' })
  const [found] = [
    ...reevaluateBreaks(readerOf(database, 'study.breakledger'), { breakIds: [1], calibrationId, settings: {} }),
  ]
  expect(found).toMatchObject({ breakId: 1, evaluation: null, message: expect.stringMatching(/readings in N/) })
})

test('throws when the calibration is not there', () => {
  const { database } = study()
  expect(() =>
    reevaluateBreaks(readerOf(database, 'study.breakledger'), { breakIds: [1], calibrationId: 5, settings: {} }).next(),
  ).toThrow(expect.objectContaining({ code: 'not-found' }))
})
