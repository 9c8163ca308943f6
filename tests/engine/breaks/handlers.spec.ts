import { afterEach, beforeEach, expect, test } from 'vitest'
import { breakRecord } from '#contract/breaks/break.ts'
import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import { listQuery } from '#contract/listQuery.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { storedCurve } from '#engine/breaks/storedCurve.ts'
import { benchEngine } from '#tests/fakes/benchEngine.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { madeCalibration } from '../../archive/storedCalibration.ts'
import { evaluationOf, header, morning, rampAndFall, session } from '../../archive/storedStudy.ts'

// 1000 samples at 1 kHz up to 600,000 counts at 0.9 s: 6 kN at 0.01 N a count, 666.67 counts a sample.
const curve = rampAndFall(1000, 600_000)
const popIn = { kind: 'pop-in', startTimeS: 0.3, endTimeS: 0.3005, dropN: 120, dropPercent: 5.5, cycles: null } as const
const signature = { by: 'bench', reason: 'the wedge let go first' }

let home: Awaited<ReturnType<typeof temporaryArchive>>
let made: Awaited<ReturnType<typeof benchEngine>>
beforeEach(async () => {
  home = await temporaryArchive()
  made = await benchEngine(home.archive)
})
afterEach(async () => {
  await made.engine.close()
  await home.remove()
})

async function keepBreak(events: Partial<CurveEvent>[] = [popIn], ended = true): Promise<number> {
  const { archive } = home
  const [specimenId] = await addBlocks(archive, [`A-${(await archive.info()).specimens + 1}`])
  const { sessionId } = await archive.beginSession(session)
  const { breakId } = await archive.beginBreak(header(sessionId, specimenId!))
  await archive.appendSamples(breakId, curve)
  const result = { events: events as CurveEvent[], flags: ['uncalibrated', 'above-verified-range'] as never }
  if (ended) await archive.finishBreak(breakId, morning, 'complete', 0, evaluationOf(curve, result))
  return breakId
}

test('gives the numbers of the breaks that fit, in the order of the list', async () => {
  const breakIds = [await keepBreak(), await keepBreak()]
  const { offset: _offset, limit: _limit, ...query } = listQuery.parse({ descending: true })
  expect(await made.handlers['breaks.ids'](query)).toEqual(breakIds.toReversed())
  expect(await made.handlers['breaks.ids']({ ...query, text: 'a-1' })).toEqual(breakIds.slice(0, 1))
})

test('lets a picked sample stand for the peak everywhere, and takes it back', async () => {
  const { handlers, heardOf } = made
  const breakId = await keepBreak()
  const record = await handlers['breaks.pickPeak']({ breakId, timeS: 0.45004, ...signature })
  expect(breakRecord.parse(record)).toEqual(record)
  // By hand: sample 450 of a ramp to 600,000 counts at sample 900 is 300,000 counts, 3 kN, 5 MPa over 600 mm2.
  expect(record.summary).toMatchObject({ peakN: 3000, strengthMPa: 5, samplingBoundPercent: null, outcome: 'break' })
  expect(record.summary.overruled).toEqual({
    ...signature,
    kind: 'peak-picked',
    recordedAt: made.clock.instant(),
    timeS: 0.45,
    foundPeakN: 6000,
  })
  expect(record.summary.flags).toEqual(['uncalibrated', 'peak-picked'])
  expect(record.evaluations[0]!.result.peakN).toBe(6000)
  expect(record.decisions.at(-1)).toMatchObject({ kind: 'peak-picked', sample: { timeS: 0.45, reading: 300_000 } })
  const [specimen] = (await home.archive.listSpecimens(listQuery.parse({}))).rows
  expect(specimen!.breakInForce).toEqual(record.summary)
  expect((await home.archive.listBreaks(listQuery.parse({ sort: 'peakN' }))).rows).toMatchObject([record.summary])
  expect(heardOf('records.changed').at(-1)).toEqual({
    topics: [`break ${breakId}`, `result ${breakId}`, `specimen ${specimen!.specimenId}`],
  })
  const exported = await storedCurve(home.path, 'test', breakId)
  expect(exported.record.summary).toEqual(record.summary)
  expect([...exported.csv(['whose word it is'])].join('')).toMatch(/^# whose word it is\ntime_s,/)

  const back = await handlers['breaks.peakAsFound']({ breakId, by: 'bench', reason: 'it had not' })
  expect(back.summary).toMatchObject({ peakN: 6000, overruled: null, samplingBoundPercent: 0.2 })
  expect(back.summary.flags).toEqual(['uncalibrated', 'above-verified-range'])
  expect(back.decisions.map(({ kind }) => kind)).toEqual(['peak-picked', 'peak-as-found'])
  expect((await home.archive.verify(() => {}, new AbortController().signal)).faults).toEqual([])
})

test('declares a premature failure at the highest sample before the first early drop', async () => {
  const breakId = await keepBreak()
  const { summary, decisions } = await made.handlers['breaks.declarePremature']({ breakId, ...signature })
  // Samples from 0.28 s to 0.3005 s: the last of them, number 300, is the highest: 200,000 counts.
  expect(decisions.at(-1)!.sample).toEqual({ timeS: 0.3, reading: 200_000 })
  expect(summary).toMatchObject({ peakN: 2000, overruled: { kind: 'premature-failure', timeS: 0.3 } })
  expect(summary.flags).toContain('premature-failure')
  // The newest word decides.
  const picked = await made.handlers['breaks.pickPeak']({ breakId, timeS: 0.6, ...signature })
  expect(picked.summary).toMatchObject({ peakN: 4000, overruled: { kind: 'peak-picked' } })
  expect(picked.summary.flags).not.toContain('premature-failure')
})

test('counts an overruled unloading as a break, and gives it back what it was', async () => {
  const breakId = await keepBreak()
  await home.archive.addEvaluation({ ...evaluationOf(curve, { outcome: 'unloading', events: [] }), breakId })
  expect((await home.archive.break(breakId)).summary.outcome).toBe('unloading')
  expect((await made.handlers['breaks.pickPeak']({ breakId, timeS: 0.9, ...signature })).summary.outcome).toBe('break')
  expect((await made.handlers['breaks.peakAsFound']({ breakId, ...signature })).summary.outcome).toBe('unloading')
})

test('follows the scale of the result in force, and marks the load that counts by its verified range', async () => {
  const breakId = await keepBreak()
  await made.handlers['breaks.pickPeak']({ breakId, timeS: 0.15, ...signature })
  const rows = [0, 1000, 2000, 4000].map((forceN) => ({
    run: 1,
    direction: 'up' as const,
    forceN,
    reading: forceN / 0.02,
  }))
  const assessment = calibrationOf(rows, { degree: 1 })
  const { calibrationId } = await home.archive.addCalibration(madeCalibration({ rows, readings: [], assessment }), null)
  const { coefficients, verifiedRangeN } = assessment.result
  const scale = { kind: 'calibration', calibrationId, coefficients } as const
  const peakN = coefficients[0]! + coefficients[1]! * 600_000
  const under = evaluationOf(curve, { peakN, flags: ['above-verified-range'] })
  await home.archive.addEvaluation({ ...under, scale, breakId })
  const { summary } = await home.archive.break(breakId)
  // Sample 150 reads 100,000 counts, 2 kN at 0.02 N a count, which the calibration reached; the peak found lies beyond.
  expect(summary.peakN).toBeCloseTo(2000, 6)
  expect(verifiedRangeN![1]).toBe(4000)
  expect(summary.flags).toEqual(['peak-picked'])
  expect(summary.verification!.timesVerified).toBeCloseTo(0.5, 6)
  expect((await home.archive.verify(() => {}, new AbortController().signal)).faults).toEqual([])
  const high = await made.handlers['breaks.pickPeak']({ breakId, timeS: 0.6, ...signature })
  expect(high.summary.flags).toEqual(['above-verified-range', 'peak-picked'])
})

test('gives no load where there is no scale', async () => {
  const breakId = await keepBreak()
  const bare = evaluationOf(curve, { peakN: null, flags: ['no-scale'] })
  await home.archive.addEvaluation({ ...bare, scale: { kind: 'none' }, breakId })
  const { summary } = await made.handlers['breaks.pickPeak']({ breakId, timeS: 0.45, ...signature })
  expect(summary).toMatchObject({ peakN: null, strengthMPa: null, outcome: 'break', overruled: { foundPeakN: null } })
})

test('refuses what cannot be, with what to do instead, and records nothing then', async () => {
  const { handlers } = made
  const plain = await keepBreak([])
  const running = await keepBreak([], false)
  const refused = (asked: Promise<unknown>, code: string, message: RegExp) =>
    expect(asked).rejects.toMatchObject({ code, message: expect.stringMatching(message) })
  await refused(handlers['breaks.pickPeak']({ breakId: plain, timeS: 5, ...signature }), 'invalid-input', /outside the/)
  await refused(handlers['breaks.pickPeak']({ breakId: running, timeS: 0.1, ...signature }), 'conflict', /recorded/)
  await refused(handlers['breaks.declarePremature']({ breakId: plain, ...signature }), 'conflict', /No early drop/)
  await refused(handlers['breaks.declarePremature']({ breakId: running, ...signature }), 'conflict', /recorded/)
  await refused(handlers['breaks.peakAsFound']({ breakId: plain, ...signature }), 'conflict', /was found/)
  await refused(handlers['breaks.pickPeak']({ breakId: 99, timeS: 0, ...signature }), 'not-found', /break 99/)
  expect((await home.archive.break(plain)).decisions).toEqual([])
})

test('keeps what happened to a break that is set aside, until it is taken back', async () => {
  const breakId = await keepBreak()
  const aside = await made.handlers['breaks.setAside']({ breakId, cause: 'fixture-touched', ...signature })
  expect(aside.summary).toMatchObject({ setAside: signature.reason, setAsideCause: 'fixture-touched' })
  const back = await made.handlers['breaks.takeBack']({ breakId, ...signature })
  expect(back.summary).toMatchObject({ setAside: null, setAsideCause: null })
})
