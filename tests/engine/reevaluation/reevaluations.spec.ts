import { join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import { afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { Trouble } from '#contract/errors.ts'
import type { Emit, EventName } from '#contract/events.ts'
import { type ReevaluationSummary, reevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import { detectionMethod } from '#domain/signal/loading/evaluateCurve.ts'
import { createLongTasks } from '#engine/core/longTask.ts'
import { createSteppedClock } from '#engine/core/steppedClock.ts'
import { createReevaluations, type ReevaluationParts } from '#engine/reevaluation/reevaluations.ts'
import type { reevaluationThread } from '#engine/reevaluation/reevaluationThread.ts'
import { benchEngine, virtualChoice } from '#tests/fakes/benchEngine.ts'
import { fillWithBreaks, type LoadedCurve, loadedCurves } from '#tests/fakes/loadedBreaks.ts'
import { temporaryFolder } from '../../archive/storedStudy.ts'

const breaks = 40
const everyBreak = Array.from({ length: breaks }, (_, i) => i + 1)
const request = { breakIds: everyBreak, calibrationId: null, settings: { settlingTimeS: 0.05 }, by: 'bench' }
const clock = createSteppedClock(Date.UTC(2031, 4, 3, 9))

let curves: LoadedCurve[] = []
beforeAll(() => {
  const kinds = ['brittle', 'stick-slip'] as const
  curves = kinds.flatMap((scenario) => loadedCurves({ scenario, rateHz: 80, seed: 5, breaks: 2, knocksPerHour: 0 }))
})

let archive: Archive
let heard: { name: EventName; payload: unknown }[]
let tasks: ReturnType<typeof createLongTasks>
beforeEach(async () => {
  const path = join(temporaryFolder(), 'study.breakledger')
  fillWithBreaks(path, breaks, (index) => curves[index % curves.length]!)
  archive = await openArchive({ path, program: 'test' })
  heard = []
  tasks = createLongTasks()
})
afterEach(() => archive.close())

const emit: Emit = (name, payload) => void heard.push({ name, payload })
const heardOf = (name: EventName) => heard.filter((one) => one.name === name).map(({ payload }) => payload)
const made = (change: Partial<ReevaluationParts> = {}) =>
  createReevaluations({ archive, clock, tasks, emit, program: 'test', ...change })

async function ended({ reevaluationId }: ReevaluationSummary): Promise<ReevaluationSummary> {
  for (;;) {
    const summary = await archive.reevaluation(reevaluationId)
    if (summary.end !== null) return summary
  }
}

const soundly = async () => (await archive.verify(() => {}, new AbortController().signal)).faults

test('begins at once, tells how far it is, and lays every result beside the one in force', async () => {
  const begun = await made().begin(request)
  expect(reevaluationSummary.parse(begun)).toEqual(begun)
  expect(begun).toMatchObject({ breaks, evaluated: 0, end: null, method: detectionMethod, by: 'bench' })
  const summary = await ended(begun)
  expect(summary).toMatchObject({ evaluated: breaks, end: { ending: 'complete', problems: [] } })
  const progress = heardOf('task.progress') as { done: number }[]
  expect(progress[0]).toEqual({ task: 'reevaluation', done: 0, total: breaks })
  expect(progress.at(-1)).toEqual({ task: 'reevaluation', done: breaks, total: breaks })
  expect(progress.map(({ done }) => done)).toEqual(progress.map(({ done }) => done).toSorted((a, b) => a - b))
  for (const breakId of everyBreak) {
    const { evaluations, inForceId } = await archive.break(breakId)
    expect(inForceId).toBe(evaluations[0]!.evaluationId)
    expect(evaluations[1]).toMatchObject({
      reevaluationId: begun.reevaluationId,
      besideId: inForceId,
      madeAt: clock.instant(),
      settings: { settlingTimeS: 0.05 },
      result: { peakN: evaluations[0]!.result.peakN },
    })
  }
  expect(await soundly()).toEqual([])
})

test('takes a break that is named twice once, and keeps what cannot be evaluated as problems', async () => {
  const { sessionId } = (await archive.break(1)).session
  const { settings, scale, readingUnit, tare } = (await archive.break(1)).header
  const running = await archive.beginBreak({
    ...{ sessionId, specimenId: null, startedAt: clock.instant(), settings, scale, readingUnit, tare },
  })
  const summary = await ended(await made().begin({ ...request, breakIds: [2, running.breakId, 2] }))
  expect(summary).toMatchObject({ breaks: 2, evaluated: 1 })
  expect(summary.end).toMatchObject({
    ending: 'complete',
    problems: [{ breakId: running.breakId, message: expect.stringMatching(/still being recorded/) }],
  })
  expect(await soundly()).toEqual([])
})

test('runs one at a time', async () => {
  const reevaluations = made()
  const first = reevaluations.begin(request)
  await expect(reevaluations.begin(request)).rejects.toMatchObject({ code: 'conflict' })
  await ended(await first)
  await reevaluations.close()
  expect((await archive.reevaluations()).rows).toHaveLength(1)
})

test('refuses breaks and calibrations that are not there, and records nothing then', async () => {
  const reevaluations = made()
  await expect(reevaluations.begin({ ...request, breakIds: [1, 99] })).rejects.toMatchObject({ code: 'not-found' })
  await expect(reevaluations.begin({ ...request, calibrationId: 3 })).rejects.toMatchObject({ code: 'not-found' })
  expect((await archive.reevaluations()).rows).toEqual([])
  await ended(await reevaluations.begin(request))
})

/** Evaluates like the real thread, but waits before each further batch until it is told, or fails then. */
function halting() {
  const gate = Promise.withResolvers<void>()
  // The thread may still be reading when the gate falls; until it looks, nobody else must miss a handler.
  gate.promise.catch(() => {})
  const evaluate: typeof reevaluationThread = async function* (opening, order, signal) {
    const { reevaluationThread: real } = await import('#engine/reevaluation/reevaluationThread.ts')
    for await (const batch of real(opening, { ...order, breakIds: order.breakIds.slice(0, 3) }, signal)) yield batch
    signal.throwIfAborted()
    const aborted = new Promise<never>((_, reject) => {
      signal.addEventListener('abort', () => reject(signal.reason))
    })
    await Promise.race([gate.promise, aborted])
  }
  return { evaluate, fail: gate.reject }
}

async function untilEvaluated({ reevaluationId }: ReevaluationSummary, count: number): Promise<void> {
  while ((await archive.reevaluation(reevaluationId)).evaluated < count) await setImmediate()
}

test('stops when it is cancelled; what was found stays', async () => {
  const reevaluations = made({ evaluate: halting().evaluate })
  const begun = await reevaluations.begin(request)
  await untilEvaluated(begun, 3)
  expect(tasks.cancel('reevaluation')).toBe(true)
  expect(await ended(begun)).toMatchObject({ evaluated: 3, end: { ending: 'cancelled' } })
  await reevaluations.close()
  expect(heardOf('trouble')).toEqual([])
  expect(await soundly()).toEqual([])
})

test('is cut short when the program ends, before the archive is closed', async () => {
  const reevaluations = made({ evaluate: halting().evaluate })
  const begun = await reevaluations.begin(request)
  await untilEvaluated(begun, 3)
  await reevaluations.close()
  expect((await archive.reevaluation(begun.reevaluationId)).end).toMatchObject({ ending: 'cut-short' })
})

test('is cut short when it fails, and says so', async () => {
  const { evaluate, fail } = halting()
  const begun = await made({ evaluate }).begin(request)
  await untilEvaluated(begun, 3)
  fail(new Trouble('archive-damaged', 'a page is damaged', 'take a backup'))
  expect(await ended(begun)).toMatchObject({ evaluated: 3, end: { ending: 'cut-short' } })
  while (heardOf('trouble').length === 0) await setImmediate()
  expect(heardOf('trouble')).toEqual([{ code: 'archive-damaged', message: 'a page is damaged', hint: 'take a backup' }])
})

/** The archive on a disk that takes no end of a re-evaluation until there is room. */
function fullDisk() {
  const disk = { full: true, tried: 0 }
  const onDisk: Archive = {
    ...archive,
    async endReevaluation(end) {
      disk.tried += 1
      if (disk.full) throw new Trouble('disk-full', 'There is no room.', 'Make room.')
      return archive.endReevaluation(end)
    },
  }
  return { disk, onDisk }
}

test('records its end when there is room again, as it ended then, and begins no other before', async () => {
  const { disk, onDisk } = fullDisk()
  const { evaluate, fail } = halting()
  const reevaluations = made({ archive: onDisk, evaluate })
  const begun = await reevaluations.begin(request)
  await untilEvaluated(begun, 3)
  const endedAt = clock.instant()
  fail(new Trouble('disk-full', 'There is no room for results.', 'Make room.'))
  while (heardOf('trouble').length === 0) await setImmediate()
  expect(heardOf('trouble')).toMatchObject([{ message: 'There is no room for results.' }])
  clock.step(60)
  await expect(reevaluations.settle()).rejects.toMatchObject({ code: 'disk-full' })
  await expect(reevaluations.begin(request)).rejects.toMatchObject({ code: 'disk-full' })
  expect((await archive.reevaluations()).rows).toMatchObject([{ end: null }])
  disk.full = false
  disk.tried = 0
  await Promise.all([reevaluations.settle(), reevaluations.settle()])
  expect(disk.tried).toBe(1)
  expect((await archive.reevaluation(begun.reevaluationId)).end).toMatchObject({ ending: 'cut-short', endedAt })
  await ended(await made().begin(request))
  expect(await soundly()).toEqual([])
})

test('says when a full disk keeps a stop from being recorded, and closes all the same', async () => {
  const { onDisk } = fullDisk()
  const reevaluations = made({ archive: onDisk, evaluate: halting().evaluate })
  const begun = await reevaluations.begin(request)
  await untilEvaluated(begun, 3)
  tasks.cancel('reevaluation')
  while (heardOf('trouble').length === 0) await setImmediate()
  expect(heardOf('trouble')).toMatchObject([{ code: 'disk-full' }])
  await reevaluations.close()
  expect((await archive.reevaluation(begun.reevaluationId)).end).toBeNull()
})

test('leaves a capture at 1 kHz whole that runs meanwhile, and lets its own break be', async () => {
  const press = { scenario: 'brittle', rateHz: 1000, breaks: 1 } as const
  const { engine, handlers, until, clock: benchClock } = await benchEngine(archive, press, { withSpecimens: false })
  await handlers['bench.connect']({ source: virtualChoice })
  const { captureBreakId } = await until(({ phase, captureBreakId: id }) => phase === 'loading' && id !== null)
  const begun = await handlers['reevaluations.begin'](request)
  let captured = false
  for (let end: unknown = null; end === null || !captured; ) {
    benchClock.step(0.05)
    await setImmediate()
    captured = engine.bench.state().lastBreak !== null
    end = (await archive.reevaluation(begun.reevaluationId)).end
  }
  const { lastBreak, signal } = engine.bench.state()
  await engine.close()
  expect(signal.missingSamples).toBe(0)
  expect(lastBreak).toMatchObject({ breakId: captureBreakId, outcome: 'break', ending: 'complete' })
  const { timeS } = await archive.readCurve(captureBreakId!)
  for (let i = 1; i < timeS.length; i++) expect(timeS[i]! - timeS[i - 1]!).toBeCloseTo(0.001, 4)
  expect((await archive.reevaluation(begun.reevaluationId)).evaluated).toBe(breaks)
  expect((await archive.break(captureBreakId!)).evaluations).toHaveLength(1)
  expect(await soundly()).toEqual([])
})
