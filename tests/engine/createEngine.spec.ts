import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { createRecordedSource } from '#acquisition/recordedSource.ts'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { sourceChoice } from '#contract/bench/source.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { Trouble } from '#contract/errors.ts'
import { listQuery } from '#contract/listQuery.ts'
import { procedures } from '#contract/procedures.ts'
import { isTouched } from '#contract/topics.ts'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import { benchEngine, serialChoice, virtualChoice } from '#tests/fakes/benchEngine.ts'
import { fullDisk } from '#tests/fakes/fullDisk.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { keepCurve } from './storedCurves.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(() => home.remove())

const signature = { by: 'test', reason: 'the block slipped' }

describe('hands-free work', () => {
  it('gives each break to the specimen in the press and goes on to the next', async () => {
    const [first, second, third] = await addBlocks(home.archive, ['A-1', 'A-2', 'A-3'])
    const { engine, until, handlers } = await benchEngine(home.archive, { breaks: 2 })
    await handlers['bench.connect']({ source: virtualChoice })
    expect((await until(({ phase }) => phase === 'waiting')).tare).not.toBeNull()
    const loading = await until(({ phase, captureBreakId }) => phase === 'loading' && captureBreakId !== null)
    expect(loading.specimen?.specimenId).toBe(first)
    expect(loading.runningPeak).not.toBeNull()
    const broke = await until(({ lastBreak }) => lastBreak !== null)
    expect(broke.lastBreak).toMatchObject({
      specimenId: first,
      number: 'A-1',
      outcome: 'break',
      flags: ['uncalibrated'],
    })
    expect(broke.lastBreak!.strengthMPa).toBeCloseTo(broke.lastBreak!.peakN! / 600, 9)
    const advanced = await until(({ specimen }) => specimen?.specimenId === second)
    expect(advanced.lastBreak?.specimenId).toBe(first)
    await until(({ lastBreak }) => lastBreak?.specimenId === second)
    await until(({ specimen }) => specimen?.specimenId === third)
    await engine.close()
    const { rows } = await home.archive.listBreaks(listQuery.parse({ sort: 'startedAt' }))
    expect(rows.map(({ specimenId }) => specimenId)).toEqual([first, second])
    const report = await home.archive.verify(() => {}, new AbortController().signal)
    expect(report).toMatchObject({ sound: true, breaks: 2 })
  })

  it('shows what happens in at most ten states a second, each of them whole', async () => {
    await addBlocks(home.archive, ['A-1'])
    const { engine, until, heardOf, timesOf, handlers } = await benchEngine(home.archive, { breaks: 1 })
    await handlers['bench.connect']({ source: virtualChoice })
    await until(({ lastBreak }) => lastBreak !== null)
    await engine.close()
    const times = timesOf('bench.state')
    for (let i = 1; i < times.length; i++) expect(times[i]! - times[i - 1]!).toBeGreaterThanOrEqual(0.1 - 1e-9)
    for (const state of heardOf('bench.state'))
      expect(() => procedures['bench.state'].output.parse(state)).not.toThrow()
    const phases = heardOf('bench.state').map(({ phase }) => phase)
    for (const phase of ['settling', 'waiting', 'loading', 'broke']) expect(phases).toContain(phase)
  })
})

describe('an archive with a record that cannot be read', () => {
  const unreadable = async () => {
    throw new Trouble('archive-damaged', 'A record cannot be read.', 'Check the archive.')
  }
  const infoOf = async (archive: Archive) => (await benchEngine(archive)).handlers['app.info']({})

  it('opens without the calibration in force, and says so', async () => {
    const { openingTrouble } = await infoOf({ ...home.archive, calibrationDecided: unreadable })
    expect(openingTrouble).toMatchObject({
      code: 'archive-damaged',
      message: expect.stringMatching(/^The calibration in force cannot be read.*A record cannot be read\.$/),
    })
    expect((await infoOf(home.archive)).openingTrouble).toBeNull()
  })

  it('opens with a break that was cut short and cannot be evaluated, and evaluates the others', async () => {
    const keep = () => keepCurve(home.archive, { restMs: 500, climbMs: 3000, afterMs: 500, peakCounts: 400_000 }, {})
    const [damaged, sound] = [await keep(), await keep()]
    const evaluated: number[] = []
    const archive: Archive = {
      ...home.archive,
      recoveredWithoutEvaluation: async () => [damaged, sound],
      readCurve: (breakId) => (breakId === damaged ? unreadable() : home.archive.readCurve(breakId)),
      addEvaluation: (added) => {
        evaluated.push(added.breakId)
        return home.archive.addEvaluation(added)
      },
    }
    const { openingTrouble } = await infoOf(archive)
    expect(openingTrouble?.message).toMatch(new RegExp(`^Break ${damaged}, which was cut short`))
    expect(evaluated).toEqual([sound])
  })

  it('says that the settings were changed behind its back', async () => {
    const { openingTrouble } = await infoOf({ ...home.archive, arePreferencesSound: async () => false })
    expect(openingTrouble?.message).toMatch(/settings .* damaged/)
  })

  it('opens where the next specimen cannot be read', async () => {
    const { openingTrouble } = await infoOf({ ...home.archive, waitingSpecimens: unreadable, pressQueue: unreadable })
    expect(openingTrouble?.message).toMatch(/next is not known/)
  })
})

describe('work by key', () => {
  it('keeps the broken specimen at hand until the next loading begins', async () => {
    const [first, second] = await addBlocks(home.archive, ['A-1', 'A-2', 'A-3'])
    const { engine, until, handlers } = await benchEngine(home.archive, { breaks: 2 })
    await handlers['preferences.set']({ handsFree: false })
    await handlers['bench.connect']({ source: virtualChoice })
    await until(({ lastBreak }) => lastBreak !== null)
    const before = await until(({ phase }) => phase === 'loading')
    expect(before.lastBreak?.specimenId).toBe(first)
    await until(({ lastBreak }) => lastBreak?.specimenId === second)
    await engine.close()
  })

  it('goes on with the next key, and takes a specimen by choice', async () => {
    const [first, second, third] = await addBlocks(home.archive, ['A-1', 'A-2', 'A-3'])
    const { engine, handlers } = await benchEngine(home.archive)
    expect((await handlers['bench.state']({})).specimen?.specimenId).toBe(first)
    expect((await handlers['bench.nextSpecimen']({})).specimen?.specimenId).toBe(second)
    expect((await handlers['bench.takeSpecimen']({ specimenId: third!, again: false })).specimen?.specimenId).toBe(
      third,
    )
    expect((await handlers['bench.takeSpecimen']({ specimenId: null, again: false })).specimen).toBeNull()
    await expect(handlers['bench.takeSpecimen']({ specimenId: 99, again: false })).rejects.toMatchObject({
      code: 'not-found',
    })
    await engine.close()
  })
})

describe('a disk that is full', () => {
  it('lets the capture go on in memory, says so, and gets every sample when there is room again', async () => {
    const { archive, fill } = fullDisk(home.archive, ['appendSamples', 'finishBreak'])
    const { engine, until, heardOf, handlers } = await benchEngine(archive, { breaks: 1 })
    await handlers['bench.connect']({ source: virtualChoice })
    await until(({ captureBreakId }) => captureBreakId !== null)
    fill(true)
    const troubled = await until(({ storageProblem }) => storageProblem !== null)
    expect(troubled.phase).toBe('loading')
    expect(troubled.storageProblem).toMatchObject({ code: 'disk-full' })
    expect(troubled.storageProblem!.message).toContain('waits in memory')
    await until(({ phase }) => phase === 'broke')
    expect(heardOf('records.changed').some(({ topics }) => isTouched(['results'], topics))).toBe(false)
    fill(false)
    const stored = await until(({ lastBreak }) => lastBreak !== null)
    expect(stored.storageProblem).toBeNull()
    await engine.close()
    expect(heardOf('trouble').map(({ code }) => code)).toEqual(['disk-full'])
    const { evaluations, end } = await home.archive.break(stored.lastBreak!.breakId)
    expect(end!.samples).toBe(evaluations[0]!.result.samples)
    expect((await home.archive.verify(() => {}, new AbortController().signal)).sound).toBe(true)
  })
})

describe('a break that cannot be stored', () => {
  it('is told and kept in memory, does not keep the next one from the disk, and is stored at the end when it can be', async () => {
    let refusedStart: string | null = null
    let mended = false
    const archive: Archive = {
      ...home.archive,
      beginBreak(header) {
        refusedStart ??= header.startedAt
        if (header.startedAt === refusedStart && !mended) return Promise.reject(new Error('a fault of the program'))
        return home.archive.beginBreak(header)
      },
    }
    const { engine, until, heardOf, handlers } = await benchEngine(archive, { breaks: 2 })
    await handlers['bench.connect']({ source: virtualChoice })
    const next = await until(({ lastBreak }) => lastBreak !== null)
    expect(next.lastBreak!.startedAt).not.toBe(refusedStart)
    expect(next.storageProblem?.code).toBe('internal')
    expect(heardOf('trouble').map(({ code }) => code)).toEqual(['internal'])
    mended = true
    await engine.close()
    expect(engine.bench.state().storageProblem).toBeNull()
    const { summary, evaluations, end } = await home.archive.break(2)
    expect(summary.startedAt).toBe(refusedStart)
    expect(end!.samples).toBe(evaluations[0]!.result.samples)
    expect((await home.archive.verify(() => {}, new AbortController().signal)).sound).toBe(true)
  })
})

it('evaluates what a crash left behind before anything else', async () => {
  const session = await home.archive.beginSession({
    startedAt: '2031-04-06T08:00:00.000Z',
    source: 'test',
    lineFormat: 'checked',
    program: 'test',
  })
  const { breakId } = await home.archive.beginBreak({
    sessionId: session.sessionId,
    specimenId: null,
    startedAt: '2031-04-06T08:00:01.000Z',
    readingUnit: 'counts',
    scale: { kind: 'uncalibrated-scale', nPerCount: 1 },
    tare: null,
    settings: detectionSettings.parse({ startThresholdN: 20 }),
  })
  const timeUs = Float64Array.from({ length: 800 }, (_, i) => i * 10_000)
  const readings = timeUs.map((time) => Math.max(0, (time - 1e6) / 1000) + ((time / 10_000) % 3))
  await home.archive.appendSamples(breakId, { timeUs, readings })
  await home.archive.close()
  const reopened = await openArchive({ path: home.path, program: 'test' })
  try {
    const { engine, handlers } = await benchEngine(reopened)
    const { summary, evaluations } = await handlers['breaks.get']({ breakId })
    expect(summary).toMatchObject({ ending: 'recovered' })
    expect(summary.flags).toEqual(expect.arrayContaining(['recovered', 'uncalibrated']))
    expect(evaluations.length).toBe(1)
    // The force when the program ended: 1 N a millisecond from 1 s to 7.99 s.
    expect(evaluations[0]!.result.peakN).toBeGreaterThan(6980)
    await engine.close()
  } finally {
    await reopened.close()
  }
})

describe('what a person decides', () => {
  it('lets a specimen wait again only when its break was of another block, and takes that back', async () => {
    const [first] = await addBlocks(home.archive, ['A-1', 'A-2'])
    const { engine, until, handlers } = await benchEngine(home.archive, { breaks: 1 })
    await handlers['bench.connect']({ source: virtualChoice })
    const { lastBreak } = await until((state) => state.lastBreak !== null)
    const { breakId } = lastBreak!
    await until(({ waitingSpecimens }) => waitingSpecimens === 1)
    const aside = await handlers['breaks.setAside']({ breakId, cause: 'specimen-slipped', ...signature })
    expect(aside.summary.setAside).toBe('the block slipped')
    const state = await handlers['bench.state']({})
    expect(state.waitingSpecimens).toBe(1)
    expect(state.lastBreak?.setAside).toBe('the block slipped')
    await handlers['breaks.setAside']({ breakId, cause: 'wrong-block', ...signature })
    expect((await handlers['bench.state']({})).waitingSpecimens).toBe(2)
    await handlers['breaks.takeBack']({ breakId, ...signature })
    expect((await handlers['bench.state']({})).waitingSpecimens).toBe(1)
    expect((await handlers['specimens.get']({ specimenId: first! })).current.breakInForce?.breakId).toBe(breakId)
    await engine.close()
  })

  it('assesses the faces of the last break, which the bench shows at once', async () => {
    await addBlocks(home.archive, ['A-1'])
    const { engine, until, heardOf, handlers } = await benchEngine(home.archive, { breaks: 1 })
    await handlers['bench.connect']({ source: virtualChoice })
    const { lastBreak } = await until((state) => state.lastBreak !== null)
    const { breakId } = lastBreak!
    const faces = { woodFailurePercent: 65, failurePattern: 'CSF', note: 'a thin spot', by: 'test' } as const
    await handlers['breaks.assess']({ breakId, ...faces })
    expect((await handlers['bench.state']({})).lastBreak).toMatchObject({ woodFailurePercent: 65, note: 'a thin spot' })
    expect(heardOf('records.changed').at(-1)).toEqual({ topics: [`break ${breakId}`, `face ${breakId}`, 'specimen 1'] })
    await engine.close()
  })

  it('adds and corrects specimens, and the bench sees them', async () => {
    const { engine, handlers } = await benchEngine(home.archive)
    const { fields } = procedures['specimens.add'].input.parse({
      fields: { number: 'N-1', adhesive: 'epoxy E4' },
      by: '',
    })
    const { specimenId } = await handlers['specimens.add']({ fields, by: 'test' })
    expect((await handlers['bench.state']({})).specimen?.fields.number).toBe('N-1')
    await handlers['specimens.correct']({ specimenId, fields: { ...fields, areaMm2: 590 }, ...signature })
    expect((await handlers['bench.state']({})).specimen?.fields.areaMm2).toBe(590)
    await engine.close()
  })
})

describe('preferences', () => {
  it('are kept in the archive, told to everybody, and leave out what is not given', async () => {
    const { engine, heardOf, handlers } = await benchEngine(home.archive)
    await handlers['preferences.set']({ nPerCount: 0.02, capacityN: 5000 })
    await handlers['preferences.set']({ units: 'US', capacityN: undefined })
    expect(heardOf('preferences.changed').at(-1)).toMatchObject({ nPerCount: 0.02, capacityN: 5000, units: 'US' })
    expect(await home.archive.preferences()).toMatchObject({ nPerCount: 0.02, capacityN: 5000, units: 'US' })
    expect((await handlers['bench.state']({})).scale).toEqual({ kind: 'uncalibrated-scale', nPerCount: 0.02 })
    await expect(handlers['preferences.set']({ nPerCount: 0 })).rejects.toMatchObject({ code: 'invalid-input' })
    await engine.close()
  })

  it('remember the device that was connected', async () => {
    const { engine, handlers } = await benchEngine(home.archive)
    await handlers['bench.connect']({ source: virtualChoice })
    await engine.close()
    expect((await home.archive.preferences()).source).toEqual(virtualChoice)
  })
})

describe('a device', () => {
  const recorded = (text: string) => (clock: Parameters<typeof createRecordedSource>[1]) =>
    createRecordedSource(
      { recording: new TextEncoder().encode(text), bytesPerSecond: 1000, paced: true, chunkBytes: 100 },
      clock,
    )

  it('that sends a unit is believed but called uncalibrated', async () => {
    const { engine, until, handlers } = await benchEngine(
      home.archive,
      {},
      { openSource: recorded('1.5 kN\n'.repeat(3000)) },
    )
    await handlers['bench.connect']({ source: serialChoice })
    const { scale } = await until(({ tare }) => tare !== null)
    expect(scale).toEqual({ kind: 'device-unit', unit: 'kN' })
    await engine.close()
  })

  it('that sends nothing readable is named, with what to try', async () => {
    const noise = recorded('\u00ff\u00fe@#~'.repeat(3000))
    const { engine, until, handlers } = await benchEngine(home.archive, {}, { openSource: noise })
    await handlers['bench.connect']({ source: serialChoice })
    const { connection, phase } = await until((state) => state.connection.problem !== null)
    expect(connection.problem).toMatchObject({ code: 'not-readable' })
    expect(connection.problem!.hint).toContain('baud rate')
    expect(phase).toBe('no-signal')
    await engine.close()
  })

  it('whose force falls under load is said to be wired in reverse, and no break is made of it', async () => {
    const rest = Array.from({ length: 500 }, (_, i) => `${(i % 2) * 0.001} kN\n`)
    const reversed = Array.from({ length: 1000 }, (_, i) => `${(-0.005 * i).toFixed(3)} kN\n`)
    const { engine, until, handlers } = await benchEngine(
      home.archive,
      {},
      { openSource: recorded([...rest, ...reversed].join('')) },
    )
    await handlers['bench.connect']({ source: serialChoice })
    await until(({ phase }) => phase === 'waiting')
    const { tareWarning, phase, lastBreak } = await until((state) => state.tareWarning !== null)
    expect(tareWarning).toMatchObject({ kind: 'far-below-zero', unit: 'N' })
    expect({ phase, lastBreak }).toEqual({ phase: 'waiting', lastBreak: null })
    await engine.close()
  })

  it('is let go when the person listens to its port, but not while a capture runs', async () => {
    const { engine, handlers } = await benchEngine(home.archive, {}, { openSource: recorded('12\n'.repeat(3000)) })
    await handlers['bench.connect']({ source: serialChoice })
    const listening = { baudRate: 9600, seconds: 1 }
    await handlers['ports.listen']({ path: '/dev/ttyOTHER', ...listening })
    expect((await handlers['bench.state']({})).connection.status).toBe('open')
    await handlers['ports.listen']({ path: '/dev/ttyTEST', ...listening })
    expect((await handlers['bench.state']({})).connection.status).toBe('closed')
    await engine.close()

    const loading = await benchEngine(home.archive, {}, { demo: false })
    await loading.handlers['bench.connect']({
      source: sourceChoice.parse({ ...serialChoice, lineFormat: { name: 'checked' } }),
    })
    await loading.until(({ phase }) => phase === 'loading')
    const heard = loading.handlers['ports.listen']({ path: '/dev/ttyTEST', ...listening })
    await expect(heard).rejects.toMatchObject({ code: 'conflict' })
    expect((await loading.handlers['bench.state']({})).connection.status).toBe('open')
    await loading.engine.close()
  })

  it('that is no virtual one cannot load a specimen', async () => {
    const { engine, handlers } = await benchEngine(home.archive, {}, { openSource: recorded('12\n'.repeat(3000)) })
    await expect(handlers['bench.loadVirtual']({})).rejects.toMatchObject({ code: 'not-connected' })
    await handlers['bench.connect']({ source: serialChoice })
    await expect(handlers['bench.loadVirtual']({})).rejects.toMatchObject({ code: 'unsupported' })
    await expect(handlers['bench.tare']({})).rejects.toMatchObject({ code: 'not-stable' })
    await engine.close()
  })

  it('that is virtual loads its next specimen when asked', async () => {
    const { engine, until, handlers, clock } = await benchEngine(home.archive, { breaks: 1, restS: [100, 120] })
    await handlers['bench.connect']({ source: virtualChoice })
    await until(({ phase }) => phase === 'waiting')
    await handlers['bench.loadVirtual']({})
    await until(({ phase }) => phase === 'loading')
    expect(clock.nowS()).toBeLessThan(60)
    await engine.close()
  })

  it('that goes away in the middle of a loading leaves a break marked as interrupted, and work goes on', async () => {
    await addBlocks(home.archive, ['A-1', 'A-2'])
    const { engine, until, handlers, clock } = await benchEngine(home.archive, {
      breaks: 1,
      unplugs: [{ atS: 7, forS: 1.5 }],
    })
    await handlers['bench.connect']({ source: virtualChoice })
    await until(({ connection }) => connection.status === 'lost')
    const { lastBreak } = await until((state) => state.lastBreak !== null)
    expect(lastBreak?.flags).toContain('interrupted')
    expect(clock.nowS()).toBeLessThan(8.5)
    await until(({ connection }) => connection.status === 'open')
    // The specimen is still under load: what is left of it is caught, without a toe.
    const { lastBreak: rest } = await until((state) => state.lastBreak?.ending === 'complete')
    expect(rest).toMatchObject({ specimenId: lastBreak!.specimenId, outcome: 'break' })
    expect(rest!.flags).toContain('no-pre-trigger')
    await engine.close()
  })

  it('above its capacity raises the alarm, armed or not', async () => {
    const { engine, until, handlers } = await benchEngine(home.archive, {
      specimen: (drawn) => ({ ...drawn, strengthMPa: 45, strengthN: 27_000 }),
    })
    await handlers['bench.arm']({ armed: false })
    await handlers['bench.connect']({ source: virtualChoice })
    expect((await until(({ overload }) => overload === 'warning')).capacityShare).toBeGreaterThan(0.9)
    expect((await until(({ overload }) => overload === 'alarm')).phase).not.toBe('loading')
    await engine.close()
  })
})

describe('the whole archive', () => {
  it('is checked with progress, and the check can be stopped', async () => {
    await addBlocks(home.archive, ['A-1'])
    const { engine, until, heardOf, handlers } = await benchEngine(home.archive, { breaks: 1 })
    await handlers['bench.connect']({ source: virtualChoice })
    await until(({ lastBreak }) => lastBreak !== null)
    expect(await handlers['archive.verify']({})).toMatchObject({ sound: true, breaks: 1, curves: 1, faults: [] })
    expect(heardOf('task.progress').length).toBeGreaterThan(0)
    const checking = handlers['archive.verify']({})
    expect(await handlers['task.cancel']({ task: 'verify' })).toBe(true)
    await expect(checking).rejects.toMatchObject({ code: 'cancelled' })
    expect(await handlers['task.cancel']({ task: 'verify' })).toBe(false)
    await engine.close()
  })

  it('says what it is through the dispatcher', async () => {
    const { engine } = await benchEngine(home.archive)
    const answer = await createDispatcher(engine.handlers)('app.info', {})
    expect(answer).toMatchObject({
      ok: true,
      value: { program: 'test', host: 'direct', archive: { specimens: 0, demo: false } },
    })
    await engine.close()
  })

  it('takes the demo study only while it is empty', async () => {
    await addBlocks(home.archive, ['A-1'])
    const { engine, handlers } = await benchEngine(home.archive)
    await expect(handlers['demo.fill']({})).rejects.toMatchObject({ code: 'conflict' })
    await engine.close()
  })
})
