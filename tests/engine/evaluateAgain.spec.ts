import { afterEach, beforeEach, expect, test } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import type { Calibration } from '#contract/records/calibration.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { storedCurve } from '#engine/archiveReading.ts'
import { drawnCurve } from '#engine/drawnCurve.ts'
import { evaluateAgain } from '#engine/evaluateAgain.ts'
import { createSteppedClock } from '#engine/steppedClock.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { madeCalibration } from '../archive/storedCalibration.ts'
import { evaluationOf, header, morning, rampAndFall, session } from '../archive/storedStudy.ts'

// Half a second without load, a climb by 10 counts a millisecond, a fall to 100 counts: 6 kN at 0.01 N a count.
const rest = 500
const curve = rampAndFall(rest + 60_500, 0)
for (let i = 0; i < curve.readings.length; i++) {
  const after = i - rest
  curve.readings[i] = (after < 0 ? 0 : after <= 60_000 ? after * 10 : 100) + ((i * 7919) % 7) - 3
}
const highest = Math.max(...curve.readings)

const clock = createSteppedClock(Date.UTC(2031, 5, 6, 8))
const whole = { fromS: null, toS: null, maxPoints: null }
let archive: Archive
let path = ''
let remove = async () => {}
beforeEach(async () => {
  const made = await temporaryArchive()
  archive = made.archive
  path = made.path
  remove = made.remove
})
afterEach(() => remove())

/** A straight calibration up to a force, without zero reading of its own. */
function keepCalibration(nPerCount: number, highestN: number, change: Partial<Calibration> = {}) {
  const rows = [0, 0.25, 0.5, 0.75, 1].map((share) => ({
    run: 1,
    direction: 'up' as const,
    forceN: share * highestN,
    reading: (share * highestN) / nPerCount,
  }))
  const assessment = calibrationOf(rows, { degree: 1 })
  return archive.addCalibration({ ...madeCalibration({ rows, readings: [], assessment, ...change }) }, null)
}

async function keepBreak(ended = true): Promise<number> {
  const { sessionId } = await archive.beginSession(session)
  const { breakId } = await archive.beginBreak({ ...header(sessionId, null), tare: null })
  await archive.appendSamples(breakId, curve)
  if (ended) await archive.finishBreak(breakId, morning, 'complete', 0, evaluationOf(curve))
  return breakId
}

test('lays the result under another calibration beside the first, and says by how much they differ', async () => {
  const breakId = await keepBreak()
  const { calibrationId } = await keepCalibration(0.0101, 10_000)
  const [first] = (await archive.break(breakId)).evaluations
  const again = await evaluateAgain(archive, clock, breakId, calibrationId)
  const { evaluations, summary } = await archive.break(breakId)
  expect(evaluations).toHaveLength(2)
  expect(evaluations[0]).toEqual(first)
  expect(evaluations[1]!.scale).toMatchObject({ kind: 'calibration', calibrationId })
  expect(evaluations[1]!.madeAt).toBe(clock.instant())
  expect(evaluations[1]!.result.flags).not.toContain('uncalibrated')
  expect(evaluations[1]!.result.flags).not.toContain('above-verified-range')
  expect(again).toMatchObject({ beforeId: evaluations[0]!.evaluationId, inForceId: evaluations[1]!.evaluationId })
  // By hand: the highest count at 0.0101 N instead of 0.01 N is 1 % more.
  expect(again.peakBeforeN).toBeCloseTo(highest * 0.01, 9)
  expect(again.peakNowN).toBeCloseTo(highest * 0.0101, 6)
  expect(again.differenceN).toBeCloseTo(highest * 0.0001, 6)
  expect(again.differencePercent).toBeCloseTo(1, 9)
  expect(summary.peakN).toBe(again.peakNowN)
  // The curve on the screen, and the one that `curve` prints, have the peak that is stated beside them.
  const drawn = drawnCurve(await archive.break(breakId), await archive.readCurve(breakId), whole)
  expect(Math.max(...drawn.force)).toBe(again.peakNowN)
  const { rows } = await storedCurve(path, 'test', breakId)
  expect(Math.max(...rows.forceN!)).toBeCloseTo(again.peakNowN!, 5)
  expect((await archive.verify(() => {}, new AbortController().signal)).faults).toEqual([])
})

test('marks a peak that lies above what the other calibration verified', async () => {
  const breakId = await keepBreak()
  const { calibrationId } = await keepCalibration(0.01, 3000)
  await evaluateAgain(archive, clock, breakId, calibrationId)
  expect((await archive.break(breakId)).evaluations[1]!.result.flags).toContain('above-verified-range')
})

test('refuses what would say nothing new, and what cannot be, and stores nothing then', async () => {
  const breakId = await keepBreak()
  const running = await keepBreak(false)
  const { calibrationId } = await keepCalibration(0.01, 10_000)
  const inNewtons = await keepCalibration(1.01, 10_000, { readingUnit: 'N' })
  await evaluateAgain(archive, clock, breakId, calibrationId)
  const again = (of: number, under: number) => evaluateAgain(archive, clock, of, under)
  await expect(again(breakId, calibrationId)).rejects.toMatchObject({
    code: 'conflict',
    message: expect.stringMatching(/already/),
  })
  await expect(again(breakId, inNewtons.calibrationId)).rejects.toMatchObject({
    code: 'conflict',
    message: expect.stringMatching(/readings in N/),
  })
  await expect(again(running, calibrationId)).rejects.toMatchObject({
    code: 'conflict',
    message: expect.stringMatching(/still being captured/),
  })
  await expect(again(breakId, 9)).rejects.toMatchObject({ code: 'not-found' })
  await expect(again(9, calibrationId)).rejects.toMatchObject({ code: 'not-found' })
  expect((await archive.break(breakId)).evaluations).toHaveLength(2)
})

test('goes back to a calibration that was used before as to a new one', async () => {
  const breakId = await keepBreak()
  const one = await keepCalibration(0.01, 10_000)
  const other = await keepCalibration(0.0102, 10_000)
  for (const { calibrationId } of [one, other, one]) await evaluateAgain(archive, clock, breakId, calibrationId)
  const { evaluations } = await archive.break(breakId)
  expect(evaluations).toHaveLength(4)
  expect(evaluations[3]!.result).toEqual(evaluations[1]!.result)
})
