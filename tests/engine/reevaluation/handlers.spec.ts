import { join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import { afterEach, beforeEach, expect, test } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { Trouble } from '#contract/errors.ts'
import { listQuery } from '#contract/listQuery.ts'
import { procedures } from '#contract/procedures.ts'
import { changesQuery } from '#contract/reevaluation/changes.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { storedCurve } from '#engine/breaks/storedCurve.ts'
import { benchEngine, virtualChoice } from '#tests/fakes/benchEngine.ts'
import { fillWithBreaks, loadedCurves } from '#tests/fakes/loadedBreaks.ts'
import { madeCalibration } from '../../archive/storedCalibration.ts'
import { temporaryFolder } from '../../archive/storedStudy.ts'

const signature = { by: 'bench', reason: 'compared' }
let path = ''
let archive: Archive
let made: Awaited<ReturnType<typeof benchEngine>>
beforeEach(async () => {
  path = join(temporaryFolder(), 'study.breakledger')
  const [curve] = loadedCurves({ scenario: 'brittle', rateHz: 80, seed: 5, breaks: 1, knocksPerHour: 0 })
  fillWithBreaks(path, 3, () => curve!)
  archive = await openArchive({ path, program: 'test' })
  made = await benchEngine(archive)
})
afterEach(async () => {
  await made.engine.close()
  await archive.close()
})

/** A straight calibration through the zero of the virtual cell, with one percent more newtons a count than it was taken for. */
async function keepCalibration(): Promise<number> {
  const rows = [0, 5000, 10_000, 20_000].map((forceN) => ({
    run: 1,
    direction: 'up' as const,
    forceN,
    reading: 48_213 + forceN / 0.0101,
  }))
  const assessment = calibrationOf(rows, { degree: 1 })
  const { calibrationId } = await archive.addCalibration(madeCalibration({ rows, readings: [], assessment }), null)
  return calibrationId
}

async function evaluatedUnder(calibrationId: number): Promise<number> {
  const request = { breakIds: [1, 2, 3], calibrationId, settings: {}, by: 'bench' }
  const { reevaluationId } = await made.handlers['reevaluations.begin'](request)
  while ((await made.handlers['reevaluations.get']({ reevaluationId })).end === null) await setImmediate()
  return reevaluationId
}

test('puts results in force by one decision, everywhere, and takes them out again', async () => {
  const { handlers, heardOf } = made
  const before = await archive.break(2)
  const calibrationId = await keepCalibration()
  const reevaluationId = await evaluatedUnder(calibrationId)
  expect((await archive.break(2)).summary).toEqual(before.summary)

  const { rows, figures } = await handlers['reevaluations.changes'](changesQuery.parse({ reevaluationId }))
  expect(() => procedures['reevaluations.changes'].output.parse({ total: 3, rows, figures })).not.toThrow()
  expect(figures).toMatchObject({ results: 3, peaks: 3, outcomes: 0 })
  // One percent more newtons a count is one percent more peak.
  expect(figures.meanDifferencePercent).toBeCloseTo(1, 6)
  expect(rows.map(({ breakId, differencePercent }) => [breakId, differencePercent!.toFixed(6)])).toEqual(
    [1, 2, 3].map((breakId) => [breakId, '1.000000']),
  )

  const adopted = await handlers['reevaluations.decide']({ reevaluationId, kind: 'adopted', ...signature })
  expect(adopted.decisions).toMatchObject([{ kind: 'adopted', ...signature, recordedAt: made.clock.instant() }])
  expect(heardOf('records.changed').at(-1)!.topics.toSorted()).toEqual([
    ...[1, 2, 3].map((breakId) => `break ${breakId}`),
    ...[1, 2, 3].map((breakId) => `curve ${breakId}`),
    `reevaluation ${reevaluationId}`,
    ...[1, 2, 3].map((breakId) => `result ${breakId}`),
    ...[1, 2, 3].map((specimenId) => `specimen ${specimenId}`),
  ])
  const after = await archive.break(2)
  const inForce = after.evaluations.find(({ evaluationId }) => evaluationId === after.inForceId)!
  expect(inForce).toMatchObject({ reevaluationId, besideId: before.inForceId, scale: { calibrationId } })
  expect(after.summary.peakN).toBe(inForce.result.peakN)
  expect(after.summary).toMatchObject({ scaleKind: 'calibration', verification: { calibrationId } })
  expect(after.summary.flags).not.toContain('uncalibrated')
  // The curve that is drawn, and the one that is written, have the peak that is stated.
  const drawn = await handlers['breaks.curve']({ breakId: 2, fromS: null, toS: null, maxPoints: null })
  expect(Math.max(...drawn.force)).toBe(after.summary.peakN)
  expect(Math.max(...(await storedCurve(path, 'test', 2)).rows.forceN!)).toBeCloseTo(after.summary.peakN!, 5)
  const [specimen] = (await archive.listSpecimens(listQuery.parse({ text: 'A-2' }))).rows
  expect(specimen!.breakInForce).toEqual(after.summary)

  await handlers['reevaluations.decide']({ reevaluationId, kind: 'dropped', ...signature })
  expect((await archive.break(2)).summary).toEqual(before.summary)
  expect((await handlers['reevaluations.list']({})).rows[0]!.decisions.map(({ kind }) => kind)).toEqual([
    'adopted',
    'dropped',
  ])
  expect((await archive.verify(() => {}, new AbortController().signal)).faults).toEqual([])
})

test('begins the next from what is in force then', async () => {
  const calibrationId = await keepCalibration()
  const first = await evaluatedUnder(calibrationId)
  await made.handlers['reevaluations.decide']({ reevaluationId: first, kind: 'adopted', ...signature })
  const request = { breakIds: [1], calibrationId: null, settings: { settlingTimeS: 0.5 }, by: 'bench' }
  const { reevaluationId } = await made.handlers['reevaluations.begin'](request)
  while ((await made.handlers['reevaluations.get']({ reevaluationId })).end === null) await setImmediate()
  const { evaluations, inForceId } = await archive.break(1)
  expect(evaluations.at(-1)).toMatchObject({ besideId: inForceId, scale: { calibrationId }, reevaluationId })
  expect(evaluations.at(-1)!.result.peakN).toBe(evaluations.at(-2)!.result.peakN)
  const { rows } = await made.handlers['reevaluations.changes'](changesQuery.parse({ reevaluationId }))
  expect(rows[0]!.changed).toMatchObject({ peak: false, flags: true })
})

test('lets no great decision come between a running capture and the disk', async () => {
  const reevaluationId = await evaluatedUnder(await keepCalibration())
  const great: Archive = {
    ...archive,
    reevaluation: async (id) => ({ ...(await archive.reevaluation(id)), evaluated: 10_001 }),
  }
  const { engine, handlers, until } = await benchEngine(great)
  const adopt = () => handlers['reevaluations.decide']({ reevaluationId, kind: 'adopted', ...signature })
  await handlers['bench.connect']({ source: virtualChoice })
  await until(({ phase }) => phase === 'loading')
  await expect(adopt()).rejects.toMatchObject({ code: 'conflict', message: expect.stringMatching(/10001 results/) })
  expect((await archive.reevaluation(reevaluationId)).decisions).toEqual([])
  await until(({ lastBreak }) => lastBreak !== null)
  expect((await adopt()).decisions).toHaveLength(1)
  await engine.close()
})

test('shows no re-evaluation as running that ended on a full disk, once there is room', async () => {
  let full = true
  const onFullDisk: Archive = {
    ...archive,
    async endReevaluation(end) {
      if (full) throw new Trouble('disk-full', 'There is no room.', 'Make room.')
      return archive.endReevaluation(end)
    },
  }
  const { engine, handlers, heardOf } = await benchEngine(onFullDisk)
  const begun = await handlers['reevaluations.begin']({ breakIds: [1], calibrationId: null, settings: {}, by: 'bench' })
  const { reevaluationId } = begun
  while (heardOf('trouble').length === 0) await setImmediate()
  const adopt = () => handlers['reevaluations.decide']({ reevaluationId, kind: 'adopted', ...signature })
  await expect(adopt()).rejects.toMatchObject({ code: 'disk-full' })
  expect((await handlers['reevaluations.list']({})).rows).toMatchObject([{ evaluated: 1, end: null }])
  full = false
  expect((await handlers['reevaluations.list']({})).rows).toMatchObject([{ end: { ending: 'complete' } }])
  expect((await adopt()).decisions).toHaveLength(1)
  await engine.close()
})

test('refuses what is not there', async () => {
  const nothing = { code: 'not-found' }
  await expect(made.handlers['reevaluations.get']({ reevaluationId: 4 })).rejects.toMatchObject(nothing)
  await expect(
    made.handlers['reevaluations.decide']({ reevaluationId: 4, kind: 'adopted', ...signature }),
  ).rejects.toMatchObject(nothing)
  expect(made.heardOf('records.changed')).toEqual([])
})
