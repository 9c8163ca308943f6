import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { monitorEventLoopDelay } from 'node:perf_hooks'
import { setTimeout as sleep } from 'node:timers/promises'
import { systemClock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { sourceChoice } from '#contract/bench/source.ts'
import type { ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import type { Progress } from '#contract/tasks.ts'
import { isTouched } from '#contract/topics.ts'
import { listRealPorts, openRealSource } from '#engine/core/realParts.ts'
import { createEngine } from '#engine/createEngine.ts'
import { startEmulator } from '#tests/bench/childProcesses.ts'
import { countedLines } from '#tests/fakes/countedLines.ts'
import { fillWithBreaks, mixedCurves } from '#tests/fakes/loadedBreaks.ts'
import { placeInStream } from '#tests/fakes/ports/portCapture.ts'

const signature = { by: 'soak', reason: 'compared' }
/** One break in so many was captured at 1 kHz, the others at 80 Hz. */
const oneFastIn = 10
const liveHz = 1000

/**
 * `npm run soak -- reevaluation --breaks 5000 --loadings 6`: evaluates stored breaks once more under other thresholds
 * while a capture at 1 kHz from another process runs, adopts the results, and prints what it took. False when a sample was
 * lost, a result is missing, or the archive is not sound.
 */
export async function soak(words: readonly string[]): Promise<boolean> {
  const breaks = option(words, 'breaks', 5000)
  const loadings = option(words, 'loadings', 6)
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-reevaluation-'))
  try {
    return await soakIn(folder, breaks, loadings)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

async function soakIn(folder: string, breaks: number, loadings: number): Promise<boolean> {
  const path = join(folder, 'soak.breakledger')
  const filled = timed()
  const slow = mixedCurves(80, 6, 1)
  const fast = mixedCurves(1000, 1, 11)
  fillWithBreaks(path, breaks, (index) =>
    index % oneFastIn === 0 ? fast[(index / oneFastIn) % fast.length]! : slow[index % slow.length]!,
  )
  console.log(`${breaks} breaks stored in ${filled()} s, ${(statSync(path).size / 1e6).toFixed(0)} MB`)

  const sentFile = join(folder, 'sent.csv')
  const emulator = await startEmulator([
    ...['--rate', String(liveHz), '--scenario', 'brittle', '--breaks', String(loadings)],
    ...['--line-format', 'checked', '--seed', '7', '--sent', sentFile],
  ])
  const archive = await openArchive({ path, program: 'soak' })
  const waits = watchWaits(archive)
  const received = { lines: 0 }
  const { nPerCount, capacityN } = emulator.facts
  await archive.setPreferences({ cautionsRead: true, nPerCount, capacityN })
  const engine = await createEngine({
    archive: waits.archive,
    clock: systemClock,
    openSource: (choice, clock) => countedLines(openRealSource(choice, clock), received),
    listPorts: listRealPorts,
    listen: () => Promise.reject(new TypeError('the soak listens to no port')),
    host: { host: 'direct', capabilities: [] },
    program: 'soak',
  })
  const { handlers } = engine
  const progress: Progress[] = []
  engine.subscribe('task.progress', (told) => progress.push(told))
  engine.subscribe('trouble', (trouble) => console.log('trouble', JSON.stringify(trouble)))
  const ended = new Promise<void>((resolve) => {
    engine.subscribe('records.changed', async ({ topics }) => {
      if (!isTouched(['reevaluations'], topics)) return
      const [newest] = (await handlers['reevaluations.list']({})).rows
      if (newest!.end !== null) resolve()
    })
  })
  try {
    const lineFormat = { name: 'checked', columns: [] } as const
    const source = sourceChoice.parse({ kind: 'serial', path: emulator.facts.path, baudRate: 115_200, lineFormat })
    await handlers['bench.connect']({ source })
    while ((await handlers['bench.state']({})).phase !== 'loading') await sleep(50)

    waits.reset()
    const delayAloneMs = await quiet(3000)
    const alone = { longestWaitMs: waits.longestMs(), delayMs: delayAloneMs }
    const delay = monitorEventLoopDelay({ resolution: 1 })
    delay.enable()
    waits.reset()
    const evaluated = timed()
    const { reevaluationId } = await handlers['reevaluations.begin']({
      breakIds: Array.from({ length: breaks }, (_, i) => i + 1),
      calibrationId: null,
      settings: { breakDropShare: 0.2, settlingTimeS: 0.05, startNoiseMultiple: 8 },
      by: signature.by,
    })
    await ended
    const tookS = evaluated()
    delay.disable()
    const { lines } = received
    const during = {
      batchesMs: waits.batchesMs,
      longestWaitMs: waits.longestMs(),
      delayMs: delay.max / 1e6,
      p99Ms: delay.percentile(99) / 1e6,
    }
    console.log(`capture while it ran: ${(await handlers['bench.state']({})).phase}, ${lines} samples received by then`)

    waits.reset()
    const adopted = timed()
    const summary = await handlers['reevaluations.decide']({ reevaluationId, kind: 'adopted', ...signature })
    const adoptedS = adopted()
    const looked = timed()
    const { figures } = await handlers['reevaluations.changes']({
      ...{ reevaluationId, only: 'changed', sort: 'difference', descending: true, offset: 0, limit: 200 },
    })
    const lookedS = looked()
    const adoption = { adoptedS, lookedS, longestWaitMs: waits.longestMs() }

    const { samplesSent } = await emulator.finished
    // No longer than it takes: the path of the port that is gone may soon be that of another program's, which would be read then.
    for (let tries = 0; received.lines < samplesSent && tries < 500; tries++) await sleep(5)
    const { signal } = await handlers['bench.state']({})
    await engine.close()
    const lost = samplesSent - received.lines + signal.missingSamples + signal.rejectedLines
    const stored = await storedOf(archive, sentFile, breaks)
    const report = await archive.verify(() => {}, new AbortController().signal)
    for (const { where, what } of report.faults.slice(0, 20)) console.log(`${where}: ${what}`)
    tell({
      breaks,
      summary,
      tookS,
      progress,
      alone,
      during,
      adoption,
      samplesSent,
      received: received.lines,
      lost,
      stored,
    })
    console.log(`changed: ${JSON.stringify(figures)}`)
    console.log(
      `verify: ${report.sound ? 'sound' : 'NOT SOUND'}, ${report.ledgerEntries} entries, ${report.samples} samples`,
    )
    return (
      lost === 0 && stored.missing === 0 && summary.evaluated === breaks && report.sound && stored.breaks >= loadings
    )
  } finally {
    await emulator.stop()
    await engine.close()
    await archive.close()
  }
}

function option(words: readonly string[], name: string, otherwise: number): number {
  const at = words.indexOf(`--${name}`)
  const value = at < 0 ? otherwise : Number(words[at + 1])
  if (!Number.isInteger(value) || value < 1) throw new Error(`--${name} needs a whole number from 1 on`)
  return value
}

function timed(): () => number {
  const startedMs = performance.now()
  return () => Math.round(performance.now() - startedMs) / 1000
}

/** Longest delay of the event loop while nothing but the capture runs, ms. */
async function quiet(ms: number): Promise<number> {
  const delay = monitorEventLoopDelay({ resolution: 1 })
  delay.enable()
  await sleep(ms)
  delay.disable()
  return delay.max / 1e6
}

/** The archive, with a gauge of how long the oldest sample of each block had waited when it was on the disk. */
function watchWaits(archive: Archive) {
  let longestMs = 0
  const batchesMs: number[] = []
  // Arrival less device time of the promptest block so far: what a sample without any wait has.
  let promptest = Number.POSITIVE_INFINITY
  let of = 0
  const watched: Archive = {
    ...archive,
    async appendSamples(breakId, block) {
      const firstMs = (block.timeUs[0] ?? 0) / 1000
      const lastMs = (block.timeUs.at(-1) ?? 0) / 1000
      // The first block of a break holds what was kept from before its start.
      const first = of !== breakId
      if (first) promptest = Number.POSITIVE_INFINITY
      of = breakId
      promptest = Math.min(promptest, performance.now() - lastMs)
      await archive.appendSamples(breakId, block)
      if (!first) longestMs = Math.max(longestMs, performance.now() - firstMs - promptest)
    },
    async addReevaluated(...batch) {
      const startedMs = performance.now()
      await archive.addReevaluated(...batch)
      batchesMs.push(performance.now() - startedMs)
    },
  }
  return {
    archive: watched,
    longestMs: () => longestMs,
    batchesMs,
    reset: () => {
      longestMs = 0
    },
  }
}

/** The breaks that were captured meanwhile, and how many of them do not lie in what was sent, sample for sample. */
async function storedOf(archive: Archive, sentFile: string, filled: number) {
  const sent = Float64Array.from(readFileSync(sentFile, 'utf8').trim().split('\n').slice(1), (line) =>
    Number(line.split(',')[2]),
  )
  const { breaks: all } = await archive.info()
  let samples = 0
  let missing = 0
  for (let breakId = filled + 1; breakId <= all; breakId++) {
    const { readings } = await archive.readCurve(breakId)
    samples += readings.length
    if (placeInStream(readings, sent) === null) missing += 1
  }
  return { breaks: all - filled, samples, missing }
}

function tell(seen: {
  breaks: number
  summary: ReevaluationSummary
  tookS: number
  progress: Progress[]
  alone: { longestWaitMs: number; delayMs: number }
  during: { batchesMs: number[]; longestWaitMs: number; delayMs: number; p99Ms: number }
  adoption: { adoptedS: number; lookedS: number; longestWaitMs: number }
  samplesSent: number
  received: number
  lost: number
  stored: { breaks: number; samples: number; missing: number }
}): void {
  const { breaks, summary, tookS, progress, alone, during, adoption, stored } = seen
  const ms = (value: number) => `${value.toFixed(1)} ms`
  const lines: [string, string][] = [
    ['breaks evaluated', `${summary.evaluated} of ${breaks}, ${summary.end?.problems.length} with a problem`],
    ['time', `${tookS} s, ${((1000 * tookS) / breaks).toFixed(2)} ms a break`],
    ['progress events', `${progress.length}, last ${progress.at(-1)?.done} of ${progress.at(-1)?.total}`],
    ['samples sent, received, lost', `${seen.samplesSent}, ${seen.received}, ${seen.lost}`],
    ['stored meanwhile', `${stored.breaks} breaks, ${stored.samples} samples, ${stored.missing} curves not as sent`],
    [
      'longest wait of a sample for the disk',
      `${ms(during.longestWaitMs)} (50 ms of it are gathered); capture alone ${ms(alone.longestWaitMs)}`,
    ],
    [
      'delay of the event loop',
      `longest ${ms(during.delayMs)}, p99 ${ms(during.p99Ms)}; capture alone ${ms(alone.delayMs)}`,
    ],
    ['storing a batch of results', `longest ${ms(Math.max(...during.batchesMs))}, of ${during.batchesMs.length}`],
    ['adoption', `${ms(adoption.adoptedS * 1000)}, longest wait of a sample ${ms(adoption.longestWaitMs)}`],
    ['table of changes', ms(adoption.lookedS * 1000)],
  ]
  for (const [what, value] of lines) console.log(`${what.padEnd(40)}${value}`)
}
