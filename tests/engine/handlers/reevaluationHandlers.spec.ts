import { setTimeout as sleep } from 'node:timers/promises'
import { afterEach, beforeEach, expect, test } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import type { Handlers } from '#contract/procedures.ts'
import { changesQuery, type ReevaluationSummary } from '#contract/records/reevaluation.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { storedCurve } from '#engine/archiveReading.ts'
import { benchEngine } from '#tests/fakes/benchEngine.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { madeCalibration } from '../../archive/storedCalibration.ts'
import { evaluationOf, header, morning, rampAndFall, session } from '../../archive/storedStudy.ts'

// Half a second without load, a climb by 10 counts a millisecond, a fall to 100 counts: 6 kN at 0.01 N a count.
const rest = 500
const curve = rampAndFall(rest + 60_500, 0)
for (let i = 0; i < curve.readings.length; i++) {
  const after = i - rest
  curve.readings[i] = (after < 0 ? 0 : after <= 60_000 ? after * 10 : 100) + ((i * 7919) % 7) - 3
}
const highest = Math.max(...curve.readings)
const whole = { fromS: null, toS: null, maxPoints: null }
const signed = { by: 'bench', reason: 'the better calibration' }

let archive: Archive
let handlers: Handlers
let heard: (name: 'reevaluations.changed' | 'records.changed') => unknown[]
let path = ''
let breakId = 0
let close = async () => {}
beforeEach(async () => {
  const made = await temporaryArchive()
  archive = made.archive
  path = made.path
  const bench = await benchEngine(archive)
  handlers = bench.handlers
  const changed: unknown[] = []
  bench.engine.subscribe('reevaluations.changed', (payload) => changed.push(payload))
  heard = (name) => (name === 'reevaluations.changed' ? changed : bench.heardOf(name))
  close = async () => {
    await bench.engine.close()
    await made.remove()
  }
  const { sessionId } = await archive.beginSession(session)
  breakId = (await archive.beginBreak({ ...header(sessionId, null), tare: null })).breakId
  await archive.appendSamples(breakId, curve)
  await archive.finishBreak(breakId, morning, 'complete', 0, evaluationOf(curve))
})
afterEach(() => close())

/** A straight calibration up to a force, without zero reading of its own. */
async function keepCalibration(nPerCount: number, highestN: number): Promise<number> {
  const rows = [0, 0.25, 0.5, 0.75, 1].map((share) => ({
    run: 1,
    direction: 'up' as const,
    forceN: share * highestN,
    reading: (share * highestN) / nPerCount,
  }))
  const assessment = calibrationOf(rows, { degree: 1 })
  return (await archive.addCalibration(madeCalibration({ rows, readings: [], assessment }), null)).calibrationId
}

async function evaluated(calibrationId: number | null): Promise<ReevaluationSummary> {
  const { reevaluationId } = await handlers['reevaluations.begin']({
    ...{ breakIds: [breakId], calibrationId, settings: {}, by: 'bench' },
  })
  for (;;) {
    const summary = await handlers['reevaluations.get']({ reevaluationId })
    if (summary.end !== null) return summary
    await sleep(5)
  }
}

test('puts the result under another calibration in force when it is adopted, and not before', async () => {
  const { reevaluationId } = await evaluated(await keepCalibration(0.0101, 10_000))
  const proposed = await handlers['breaks.get']({ breakId })
  expect(proposed.inForceId).toBe(proposed.evaluations[0]!.evaluationId)
  expect(proposed.summary.peakN).toBeCloseTo(highest * 0.01, 9)
  const { rows } = await handlers['reevaluations.changes'](changesQuery.parse({ reevaluationId }))
  // By hand: the highest count at 0.0101 N instead of 0.01 N is 1 % more.
  expect(rows[0]!.differenceN).toBeCloseTo(highest * 0.0001, 6)
  expect(rows[0]!.differencePercent).toBeCloseTo(1, 9)

  await handlers['reevaluations.decide']({ reevaluationId, kind: 'adopted', ...signed })
  const { evaluations, inForceId, summary, verifications } = await handlers['breaks.get']({ breakId })
  expect(evaluations).toEqual(proposed.evaluations)
  expect(inForceId).toBe(rows[0]!.now.evaluationId)
  expect(summary.peakN).toBeCloseTo(highest * 0.0101, 6)
  expect(summary.flags).not.toContain('uncalibrated')
  expect(verifications).toHaveLength(1)
  // The curve on the screen, and the one that the command prints, have the peak that is stated beside them.
  expect(Math.max(...(await handlers['breaks.curve']({ breakId, ...whole })).force)).toBe(summary.peakN)
  expect(Math.max(...(await storedCurve(path, 'test', breakId)).rows.forceN!)).toBeCloseTo(summary.peakN!, 5)
  expect((await archive.verify(() => {}, new AbortController().signal)).faults).toEqual([])
})

test('puts the result before it in force again when it is taken out, and tells who listens', async () => {
  const before = (await handlers['breaks.get']({ breakId })).summary
  const { reevaluationId } = await evaluated(await keepCalibration(0.01, 3000))
  await handlers['reevaluations.decide']({ reevaluationId, kind: 'adopted', ...signed })
  expect((await handlers['breaks.get']({ breakId })).summary.flags).toContain('above-verified-range')
  const told = { changed: heard('reevaluations.changed').length, records: heard('records.changed').length }
  const taken = await handlers['reevaluations.decide']({ reevaluationId, kind: 'dropped', by: 'bench', reason: 'no' })
  expect((await handlers['breaks.get']({ breakId })).summary).toEqual(before)
  expect(taken.decisions.map(({ kind, reason }) => [kind, reason])).toEqual([
    ['adopted', 'the better calibration'],
    ['dropped', 'no'],
  ])
  expect(heard('reevaluations.changed').slice(told.changed)).toEqual([{ reevaluationIds: [reevaluationId] }])
  expect(heard('records.changed').slice(told.records)).toEqual([{ specimenIds: [], breakIds: [breakId] }])
})

test('keeps a no as a decision, refuses to say it twice, and lets it be thought over', async () => {
  const { reevaluationId } = await evaluated(null)
  const decide = (kind: 'adopted' | 'dropped') => handlers['reevaluations.decide']({ reevaluationId, kind, ...signed })
  expect((await decide('dropped')).decisions).toMatchObject([{ kind: 'dropped', by: 'bench' }])
  await expect(decide('dropped')).rejects.toMatchObject({ code: 'conflict' })
  expect((await decide('adopted')).decisions.at(-1)).toMatchObject({ kind: 'adopted' })
  const { inForceId, evaluations } = await handlers['breaks.get']({ breakId })
  expect(inForceId).toBe(evaluations[1]!.evaluationId)
})

test('goes back to a calibration that was used before as to a new one, and lists the newest first', async () => {
  const one = await keepCalibration(0.01, 10_000)
  const other = await keepCalibration(0.0102, 10_000)
  for (const calibrationId of [one, other, one]) {
    const { reevaluationId } = await evaluated(calibrationId)
    await handlers['reevaluations.decide']({ reevaluationId, kind: 'adopted', ...signed })
  }
  const { evaluations, inForceId } = await handlers['breaks.get']({ breakId })
  expect(evaluations).toHaveLength(4)
  expect(evaluations[3]!.result).toEqual(evaluations[1]!.result)
  expect(inForceId).toBe(evaluations[3]!.evaluationId)
  expect((await handlers['reevaluations.list']({})).map(({ calibrationId }) => calibrationId)).toEqual([
    one,
    other,
    one,
  ])
})
