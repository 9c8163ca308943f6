import { setImmediate } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { afterEach, expect, test } from 'vitest'
import { curvedCharacteristic } from '#acquisition/virtual/transferCharacteristic.ts'
import { assessmentChoices } from '#contract/calibration/calibrationRoutine.ts'
import { noFilter } from '#contract/listQuery.ts'
import { defaultPreferences } from '#contract/settings/settings.ts'
import { benchEngine, virtualChoice } from '#tests/fakes/benchEngine.ts'
import { fullDisk } from '#tests/fakes/fullDisk.ts'
import { shopPlan } from '#tests/fakes/routineRun.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

// The 100 kg of the shop on a lever of 5: to 4.9 kN of a cell of 25 kN, below where the blocks break.
const plan = shopPlan({
  runs: 2,
  averageS: 1,
  conditions: {
    gravity: { kind: 'latitude', latitudeDeg: 54, heightM: 5, ellipsoid: 'WGS 84' },
    airDensityKgPerM3: 1.2,
    leverRatio: 5,
    leverHalfWidthPercent: 0.05,
  },
})
const choices = assessmentChoices.parse({})
const saving = { choices, name: 'May', by: 'bench 1', dueOn: '2032-03-06', note: '', temperatureEndC: 19 }

const closing: (() => Promise<void>)[] = []
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close()
})

async function calibratingBench(press: Parameters<typeof benchEngine>[1] = {}) {
  const { archive, path, remove } = await temporaryArchive()
  closing.push(remove)
  const disk = fullDisk(archive, ['addRoutineReading'])
  const bench = await benchEngine(disk.archive, { characteristic: curvedCharacteristic, restS: [4, 5], ...press })
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
  /** Hangs what the position at hand asks for and waits until it is read. */
  async function read(forceN?: number) {
    const { current, positions } = await handlers['calibration.state']({})
    await handlers['bench.putVirtualWeights']({ forceN: forceN ?? positions[current!]!.forceN })
    await step(1.5)
    await handlers['calibration.goOn']({})
    for (let i = 0; i < 100; i++) {
      await step(0.5)
      const { phase } = await handlers['calibration.state']({})
      if (phase !== 'waiting-for-steady' && phase !== 'averaging') return phase
    }
    throw new Error('the reading never came')
  }
  async function readAll() {
    for (let i = 0; i < 50 && (await handlers['calibration.state']({})).phase !== 'review'; i++) await read()
  }
  async function calibrate(name = 'May') {
    await handlers['calibration.begin']({ plan, by: 'bench 1' })
    await readAll()
    return handlers['calibration.save']({ ...saving, name })
  }
  const putInForce = (calibrationId: number | null) =>
    handlers['calibrations.putInForce']({ calibrationId, by: 'bench 1', reason: 'made today' })
  return { ...bench, archive, disk, path, step, read, readAll, calibrate, putInForce }
}

test('calibrates on the live signal, keeps every reading, and captures under the calibration in force', async () => {
  const bench = await calibratingBench()
  const { handlers } = bench
  const stored = await bench.calibrate()
  expect(stored).toMatchObject({ name: 'May', device: 'virtual', readingUnit: 'counts', supersedes: null })
  expect(stored.readings).toHaveLength(14)
  expect(stored.creep.map(({ kind, run }) => [kind, run])).toEqual([
    ['zero-return', 1],
    ['zero-return', 2],
  ])
  expect(stored.circumstances).toMatchObject({ leverRatio: 5, capacityN: 25_000, temperatureEndC: 19 })
  expect(bench.engine.bench.state()).toMatchObject({ busyWith: null, scale: { kind: 'uncalibrated-scale' } })
  expect((await handlers['calibrations.list']({})).rows).toMatchObject([{ calibrationId: 1, inForce: false }])

  await bench.putInForce(1)
  await handlers['bench.putVirtualWeights']({ forceN: 0 })
  await bench.until(({ phase, calibration }) => phase === 'waiting' && calibration !== null)
  const { coefficients, verifiedRangeN } = stored.assessment.result
  expect(bench.engine.bench.state()).toMatchObject({
    scale: { kind: 'calibration', calibrationId: 1, coefficients },
    calibration: { calibrationId: 1, name: 'May', verifiedRangeN, overdue: false },
    armed: true,
  })

  const { lastBreak } = await bench.until((state) => state.lastBreak !== null)
  const peakN = lastBreak!.peakN!
  const outside = peakN > verifiedRangeN![1]
  expect(lastBreak!.verification).toMatchObject({ calibrationId: 1, timesVerified: peakN / verifiedRangeN![1] })
  expect(lastBreak!.scaleKind).toBe('calibration')
  expect(lastBreak!.flags.includes('above-verified-range')).toBe(outside)
  expect(lastBreak!.flags).not.toContain('uncalibrated')
  expect((await bench.archive.verify(() => {}, new AbortController().signal)).faults).toEqual([])
})

test('flags a peak above the verified range with how many times it is', async () => {
  const bench = await calibratingBench({ specimen: (drawn) => ({ ...drawn, strengthN: 9000, loadingS: 6 }) })
  const { handlers } = bench
  const { assessment } = await bench.calibrate()
  await bench.putInForce(1)
  await handlers['bench.putVirtualWeights']({ forceN: 0 })
  const { lastBreak } = await bench.until((state) => state.lastBreak !== null)
  expect(lastBreak!.flags).toContain('above-verified-range')
  const times = lastBreak!.verification!.timesVerified!
  expect(times).toBeCloseTo(lastBreak!.peakN! / assessment.result.verifiedRangeN![1], 9)
  // 9000 N over the 5 x 100 kg x 9.8145 m/s2 that were hung (normal gravity at 54 degrees, WGS 84).
  expect(times).toBeCloseTo(9000 / (500 * 9.8145 * 0.99985), 1)
  expect(lastBreak!.verification!.expandedUncertaintyN).toBeNull()
  const record = await handlers['breaks.get']({ breakId: lastBreak!.breakId })
  expect(record.evaluations[0]!.result.flags).toContain('above-verified-range')
  expect(record.verifications).toMatchObject([{ evaluationId: 1, calibrationId: 1, timesVerified: times }])
})

test('states the uncertainty of a peak inside the verified range', async () => {
  const bench = await calibratingBench({ specimen: (drawn) => ({ ...drawn, strengthN: 3000, loadingS: 6 }) })
  await bench.calibrate()
  await bench.putInForce(1)
  await bench.handlers['bench.putVirtualWeights']({ forceN: 0 })
  const { lastBreak } = await bench.until((state) => state.lastBreak !== null)
  const { timesVerified, expandedUncertaintyN } = lastBreak!.verification!
  expect(timesVerified).toBeLessThan(1)
  expect(expandedUncertaintyN).toBeGreaterThan(0)
  expect(lastBreak!.flags).not.toContain('above-verified-range')
})

test('lays a result under a second calibration beside the first, and changes no hash before it', async () => {
  const bench = await calibratingBench({ specimen: (drawn) => ({ ...drawn, strengthN: 3000, loadingS: 6 }) })
  const { handlers } = bench
  const { lastBreak } = await bench.until((state) => state.lastBreak !== null)
  const { breakId, peakN } = lastBreak!
  await handlers['bench.arm']({ armed: true })
  await bench.until(({ phase }) => phase === 'waiting')
  await bench.calibrate()
  const ledger = () => {
    const database = new Database(bench.path, { readonly: true })
    const rows = database.prepare('SELECT seq, hash, content FROM ledger ORDER BY seq').all()
    database.close()
    return rows
  }
  const before = ledger()
  const { reevaluationId } = await handlers['reevaluations.begin']({
    ...{ breakIds: [breakId], calibrationId: 1, settings: {}, by: 'bench 1' },
  })
  await expect
    .poll(async () => (await handlers['reevaluations.get']({ reevaluationId })).end, { interval: 10 })
    .toMatchObject({ ending: 'complete', problems: [] })
  await handlers['reevaluations.decide']({ reevaluationId, kind: 'adopted', by: 'bench 1', reason: 'weights' })
  const record = await handlers['breaks.get']({ breakId })
  expect(ledger().slice(0, before.length)).toEqual(before)
  expect(record.evaluations.map(({ scale }) => scale.kind)).toEqual(['uncalibrated-scale', 'calibration'])
  expect(record.evaluations[0]!.result.peakN).toBe(peakN)
  expect(record.inForceId).toBe(record.evaluations[1]!.evaluationId)
  // The cell is bent: at 3 kN it reads 4 x 0.0008 x (1 - 3/25) = 0.28 % too much on the straight scale.
  expect(100 * (record.evaluations[1]!.result.peakN! / peakN! - 1)).toBeCloseTo(-0.28, 1)
  expect(record.summary.verification!.calibrationId).toBe(1)
  expect((await bench.archive.verify(() => {}, new AbortController().signal)).faults).toEqual([])
})

test('looks for no break while it runs, and again once the bench is empty', async () => {
  const bench = await calibratingBench()
  const { handlers } = bench
  await handlers['calibration.begin']({ plan, by: 'bench 1' })
  expect(bench.engine.bench.state()).toMatchObject({ busyWith: 'calibration', armed: false })
  await expect(handlers['bench.arm']({ armed: true })).rejects.toThrow(/during a calibration/)
  await expect(handlers['bench.loadVirtual']({})).rejects.toMatchObject({ code: 'conflict' })
  await expect(handlers['calibration.begin']({ plan, by: 'bench 1' })).rejects.toThrow(/is running/)
  await expect(bench.putInForce(null)).rejects.toThrow(/being calibrated/)
  await bench.read()
  await bench.read()
  const { tare, capacityN } = bench.engine.bench.state()
  await handlers['preferences.set']({ detection: { ...defaultPreferences.detection, preTriggerS: 2 } })
  await bench.step(3)
  expect(bench.engine.bench.state()).toMatchObject({ tare, capacityN })
  await handlers['calibration.breakOff']({ what: 'routine', reason: 'the lever slipped' })
  await bench.step(5)
  expect(bench.engine.bench.state()).toMatchObject({ busyWith: null, armed: false, phase: 'waiting' })
  await handlers['bench.putVirtualWeights']({ forceN: 0 })
  await bench.until(({ armed }) => armed)
  const { brokenOff } = await handlers['calibrations.history']({})
  expect(brokenOff).toMatchObject([{ routineId: 1, reason: 'the lever slipped' }])
  expect(brokenOff[0]!.readings.map(({ standing }) => standing)).toEqual(['broken-off', 'broken-off'])
  expect((await handlers['breaks.list']({ ...listed })).total).toBe(0)
})

test('goes on after the plug was pulled, and on no other device than it began with', async () => {
  const bench = await calibratingBench({ unplugs: [{ atS: 30, forS: 4 }] })
  const { handlers } = bench
  await handlers['calibration.begin']({ plan, by: 'bench 1' })
  await bench.read()
  await bench.until(() => bench.clock.nowS() > 28)
  await handlers['bench.putVirtualWeights']({ forceN: 981 })
  await handlers['calibration.goOn']({})
  await bench.step(3)
  expect(await handlers['calibration.state']({})).toMatchObject({
    phase: 'step',
    current: 1,
    problem: { code: 'port-lost' },
    readings: [{ forceN: 0, standing: 'used' }],
  })
  await bench.until(({ connection }) => connection.status === 'open')
  await bench.step(3)
  expect(await bench.read()).toBe('step')
  await handlers['bench.disconnect']({})
  await expect(handlers['calibration.goOn']({})).rejects.toMatchObject({ code: 'not-connected' })
  expect((await handlers['calibration.state']({})).readings).toHaveLength(2)
})

test('keeps its readings in memory while the disk is full, says so, and saves nothing before they are stored', async () => {
  const bench = await calibratingBench()
  const { handlers } = bench
  await handlers['calibration.begin']({ plan, by: 'bench 1' })
  await bench.read()
  bench.disk.fill(true)
  await bench.readAll()
  expect(bench.engine.bench.state().storageProblem).toMatchObject({
    code: 'disk-full',
    message: expect.stringContaining('waits in memory'),
  })
  await expect(handlers['calibration.save'](saving)).rejects.toMatchObject({ code: 'disk-full' })
  expect(await handlers['calibration.state']({})).toMatchObject({ phase: 'review', readings: { length: 14 } })
  bench.disk.fill(false)
  await bench.step(2.5)
  const stored = await handlers['calibration.save'](saving)
  expect(stored.readings).toHaveLength(14)
  expect(bench.engine.bench.state().storageProblem).toBeNull()
  expect(bench.heardOf('trouble').map(({ code }) => code)).toEqual(['disk-full'])
  expect((await bench.archive.verify(() => {}, new AbortController().signal)).faults).toEqual([])
})

test('keeps the watch for overload on while it runs', async () => {
  const bench = await calibratingBench()
  await bench.handlers['calibration.begin']({ plan, by: 'bench 1' })
  await bench.handlers['bench.putVirtualWeights']({ forceN: 24_000 })
  await bench.step(3)
  expect(bench.engine.bench.state().overload).toBe('warning')
})

test('shows the drift of slope and zero from one calibration to the next', async () => {
  const bench = await calibratingBench()
  await bench.calibrate('May')
  await bench.putInForce(1)
  await bench.handlers['bench.putVirtualWeights']({ forceN: 0 })
  await bench.until(({ phase, calibration }) => phase === 'waiting' && calibration !== null)
  const second = await bench.calibrate('June')
  expect(second.supersedes).toBe(1)
  const { drift, decisions } = await bench.handlers['calibrations.history']({})
  expect(drift).toMatchObject([
    { calibrationId: 1, previousId: null, slopeChangePercent: null },
    { calibrationId: 2, previousId: 1 },
  ])
  // The same cell twice: only noise of 1 N over 4.9 kN and a drift of some newtons lie between them.
  expect(Math.abs(drift[1]!.slopeChangePercent!)).toBeLessThan(0.1)
  expect(Math.abs(drift[1]!.zeroChangeN!)).toBeLessThan(8)
  expect(decisions).toMatchObject([{ calibrationId: 1, by: 'bench 1' }])
  await bench.putInForce(null)
  await bench.until(({ calibration, scale }) => calibration === null && scale.kind === 'uncalibrated-scale', 5)
})

test('refuses to begin without a bench that can be heard, or with a plan that cannot be', async () => {
  const { archive, remove } = await temporaryArchive()
  closing.push(remove)
  const { engine, handlers } = await benchEngine(archive)
  closing.push(() => engine.close())
  await expect(handlers['calibration.begin']({ plan, by: '' })).rejects.toMatchObject({ code: 'not-connected' })
  await expect(handlers['calibration.goOn']({})).rejects.toMatchObject({ code: 'conflict' })
  const heavy = { ...plan, capacityN: 300 }
  await expect(handlers['calibration.begin']({ plan: heavy, by: '' })).rejects.toThrow(
    /more than the rated load allows/,
  )
})

const listed = {
  text: '',
  status: 'all',
  filter: noFilter,
  sort: 'number',
  descending: false,
  offset: 0,
  limit: 10,
} as const
