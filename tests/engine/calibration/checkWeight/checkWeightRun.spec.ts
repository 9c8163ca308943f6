import { setImmediate } from 'node:timers/promises'
import { afterEach, expect, test } from 'vitest'
import { readingCounts, straightCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { benchEngine, virtualChoice } from '#tests/fakes/benchEngine.ts'
import { fullDisk } from '#tests/fakes/fullDisk.ts'
import { shopWeights } from '#tests/fakes/routineRun.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { madeCalibration } from '../../../archive/storedCalibration.ts'

const closing: (() => Promise<void>)[] = []
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close()
})

/** The virtual cell at known forces, read within 1 N. */
const rows = [1, 2, 3].flatMap((run) =>
  [0, 200, 400, 600].map(
    (forceN, i): CalibrationRow => ({
      run,
      direction: 'up',
      forceN,
      reading: Math.round(
        readingCounts(straightCharacteristic, forceN + [0.8, -0.6, 0.3, -0.5][(i + run) % 4]!, forceN),
      ),
    }),
  ),
)
const [name] = shopWeights([20]).map((weight) => weight.name) as [string]
const gravity = { kind: 'typed', gMPerS2: 9.80665, halfWidthMPerS2: 0.001 } as const
// OIML R 111: 20 kg of conventional mass in air of 1.2 kg/m3.
const expectedN = 20 * 9.80665 * (1 - 1.2 / 8000)

async function checkingBench(calibrated = true) {
  const { archive, remove } = await temporaryArchive()
  closing.push(remove)
  await archive.saveWeights(shopWeights([20]), '2031-03-06T08:00:00.000Z', 'bench')
  if (calibrated) {
    const made = madeCalibration({ device: 'virtual', readings: [], rows, assessment: calibrationOf(rows) })
    const { calibrationId } = await archive.addCalibration(made, null)
    const recordedAt = '2031-03-06T08:00:00.000Z'
    await archive.addCalibrationDecision({ recordedAt, by: 'bench', reason: '', calibrationId })
  }
  const disk = fullDisk(archive, ['addCheckWeight'])
  const bench = await benchEngine(disk.archive, { restS: [4, 5], driftN: 0.2 })
  closing.push(() => bench.engine.close())
  const { handlers, clock } = bench
  await handlers['bench.connect']({ source: virtualChoice })
  await bench.until(({ phase }) => phase === 'waiting')
  async function step(seconds: number) {
    for (let left = seconds; left > 0; left -= 0.1) {
      clock.step(0.1)
      await setImmediate()
    }
  }
  /** Zero, then so many newtons on the cell. */
  async function check(forceN: number) {
    await handlers['checkWeight.begin']({ weights: [name], gravity, by: 'bench' })
    for (const hung of [0, forceN]) {
      await handlers['bench.putVirtualWeights']({ forceN: hung })
      await step(2)
      await handlers['checkWeight.goOn']({})
      await step(7)
    }
    await handlers['bench.putVirtualWeights']({ forceN: 0 })
    // The archive answers in order: once it has answered this often, the check is stored.
    for (let i = 0; i < 20 && (await handlers['checkWeight.state']({})).phase !== 'done'; i++) await archive.info()
    await step(3)
    return handlers['checkWeight.state']({})
  }
  return { ...bench, archive, disk, step, check }
}

test('reads zero and weight, stores the check, and says that the bench is right', async () => {
  const bench = await checkingBench()
  const { phase, result, problem } = await bench.check(expectedN)
  expect({ phase, problem }).toEqual({ phase: 'done', problem: null })
  expect(result!.check).toMatchObject({ calibrationId: 1, weight: name, expectedN: expect.closeTo(expectedN, 9) })
  // Means of 160 readings with 1 N of noise each, twice; the calibration itself is off by a few tenths.
  expect(Math.abs(result!.check.indicatedN - expectedN)).toBeLessThan(1)
  expect(result!.verdict).toMatchObject({ standing: 'too-few', finding: 'within-uncertainty' })
  expect(bench.engine.bench.state()).toMatchObject({ busyWith: null, armed: true })
  expect((await bench.archive.verify(() => {}, new AbortController().signal)).faults).toEqual([])
})

test('says to stop when the weight reads wrong, and keeps that check too', async () => {
  const bench = await checkingBench()
  const { result } = await bench.check(expectedN + 12)
  expect(result!.verdict).toMatchObject({ standing: 'outside', finding: 'beyond-uncertainty' })
  const [history] = (await bench.handlers['checkWeight.history']({ calibrationId: null })).rows
  expect(history).toMatchObject({ weight: name, verdict: { standing: 'outside' } })
  expect(history!.checks).toHaveLength(1)
})

test('keeps a check in memory while the disk is full, says so, and stores it when there is room again', async () => {
  const bench = await checkingBench()
  bench.disk.fill(true)
  const { phase, problem } = await bench.check(expectedN)
  expect(phase).toBe('averaging')
  expect(problem).toMatchObject({ code: 'disk-full', message: expect.stringContaining('waits in memory') })
  expect(await bench.archive.checkWeights(1)).toEqual({ rows: [] })
  bench.disk.fill(false)
  await bench.step(2.5)
  await bench.engine.bench.written()
  const after = await bench.handlers['checkWeight.state']({})
  expect(after).toMatchObject({ phase: 'done', problem: null, result: { check: { weight: name } } })
  expect(await bench.archive.checkWeights(1)).toEqual({ rows: [after.result!.check] })
  expect(bench.engine.bench.state()).toMatchObject({ busyWith: null, storageProblem: null })
  expect(bench.heardOf('trouble').map(({ code }) => code)).toEqual(['disk-full'])
})

test('stores a check whose readings were taken also when it is stopped, or the program ends, while the disk is full', async () => {
  const bench = await checkingBench()
  bench.disk.fill(true)
  await bench.check(expectedN)
  await bench.handlers['checkWeight.stop']({})
  expect(bench.engine.bench.state().busyWith).toBeNull()
  bench.disk.fill(false)
  await bench.engine.close()
  expect((await bench.archive.checkWeights(1)).rows).toHaveLength(1)
})

test('questions a zero that was read with the weight on', async () => {
  const bench = await checkingBench()
  await bench.handlers['checkWeight.begin']({ weights: [name], gravity, by: 'bench' })
  await bench.handlers['bench.putVirtualWeights']({ forceN: expectedN })
  await bench.step(2)
  await bench.handlers['checkWeight.goOn']({})
  await bench.step(7)
  expect(await bench.handlers['checkWeight.state']({})).toMatchObject({
    phase: 'load',
    problem: { message: expect.stringMatching(/as if a weight were still on/) },
  })
})

test('stores nothing of a check that was stopped', async () => {
  const bench = await checkingBench()
  await bench.handlers['checkWeight.begin']({ weights: [name], gravity, by: 'bench' })
  expect(bench.engine.bench.state().busyWith).toBe('check-weight')
  await bench.handlers['checkWeight.goOn']({})
  await bench.handlers['checkWeight.stop']({})
  await bench.step(10)
  expect(await bench.handlers['checkWeight.state']({})).toMatchObject({ phase: 'idle', result: null })
  expect(await bench.handlers['checkWeight.history']({ calibrationId: null })).toEqual({ rows: [] })
})

test('needs a calibration in force, a known weight, and gravity', async () => {
  const bare = await checkingBench(false)
  const ask = { weights: [name], gravity, by: 'bench' }
  await expect(bare.handlers['checkWeight.begin'](ask)).rejects.toThrow(/No calibration is in force/)
  expect(await bare.handlers['checkWeight.history']({ calibrationId: null })).toEqual({ rows: [] })
  const { handlers } = await checkingBench()
  await expect(handlers['checkWeight.begin']({ ...ask, gravity: null })).rejects.toThrow(/what gravity is here/)
  await expect(handlers['checkWeight.begin']({ ...ask, weights: ['3 kg'] })).rejects.toThrow(/"3 kg"/)
  await expect(handlers['checkWeight.goOn']({})).rejects.toMatchObject({ code: 'conflict' })
})
