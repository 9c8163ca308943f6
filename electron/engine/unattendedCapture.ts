// Held by tests/shells/commands/captureCommand.spec.ts.
import { systemClock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import type { SourceChoice } from '#contract/bench/source.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import type { ChainHead, HeadFinding } from '#contract/keeping/archive.ts'
import { createBench } from './bench/bench.ts'
import type { CaptureLogEntry } from './bench/capture/captureLog.ts'
import { evaluateRecovered } from './breaks/recoveredBreaks.ts'
import { calibrationInForce } from './calibration/calibrationInForce.ts'
import { createEventHub } from './core/eventHub.ts'
import { openOwnArchive, openRealSource } from './core/realParts.ts'
import { watchChain } from './keeping/watchChain.ts'

export type UnattendedOptions = {
  archivePath: string
  program: string
  /** The file that heads of chains are kept in. */
  keptHeads: string
  source: Extract<SourceChoice, { kind: 'serial' }>
  capacityN: number | null
  calibrationId: number | null
  nPerCount: number | null
  /** Breaks belong to the waiting specimens, in order of number. */
  withSpecimens: boolean
  /** Stops after so many breaks; null: goes on. */
  breaks: number | null
  /** Stops after so many seconds; null: goes on. */
  timeoutS: number | null
}

/** `head`: the newest entry of the chain when all is on disk. */
export type UnattendedEntry = CaptureLogEntry | ({ event: 'head' } & ChainHead) | { event: 'finished'; breaks: number }

/** Whoever hears of a capture that nobody watches. */
export type UnattendedListener = {
  entry(entry: UnattendedEntry): void
  trouble(trouble: TroubleMessage): void
  /** What is wrong with the chain, held against the head that was kept of it. */
  chainFinding(finding: HeadFinding): void
}

/**
 * Captures from a serial port into an archive until enough breaks came, the time is over or it is stopped. What the person
 * at the bench set for the program stays as it is. Resolves when all is on disk; a capture that runs then is kept as interrupted.
 */
export async function captureUnattended(
  options: UnattendedOptions,
  tell: UnattendedListener,
  stop: AbortSignal,
): Promise<{ breaks: number }> {
  const { program, source, capacityN, nPerCount, calibrationId } = options
  const archive = await openOwnArchive(options.archivePath, program)
  try {
    const watch = await watchChain(archive, options.keptHeads)
    if (watch.finding !== null) tell.chainFinding(watch.finding)
    const calibration = await chosenCalibration(archive, calibrationId, nPerCount)
    await evaluateRecovered(archive, systemClock, tell.trouble)
    const preferences = { ...(await archive.preferences()), capacityN, nPerCount, handsFree: true }
    const hub = createEventHub()
    hub.subscribe('trouble', tell.trouble)
    let toldProblem: string | null = null
    hub.subscribe('bench.state', ({ connection: { problem } }) => {
      // What else may be wrong with a connection is told as a trouble of its own.
      const now = problem?.code === 'not-readable' ? problem.message : null
      if (now !== null && now !== toldProblem) tell.trouble(problem!)
      toldProblem = now
    })
    let breaks = 0
    const enough = new AbortController()
    const bench = createBench({
      archive,
      clock: systemClock,
      openSource: openRealSource,
      program,
      emit: hub.emit,
      log(entry) {
        tell.entry(entry)
        if (entry.event !== 'break') return
        breaks += 1
        if (breaks === options.breaks) enough.abort()
      },
      preferences: () => preferences,
      calibration: () => calibration,
      withSpecimens: options.withSpecimens,
      demo: false,
    })
    await bench.recordsChanged()
    const callOff = options.timeoutS === null ? () => {} : systemClock.after(options.timeoutS, () => enough.abort())
    try {
      await bench.connect(source)
      await aborted(AbortSignal.any([stop, enough.signal]))
    } finally {
      callOff()
      await bench.close()
      await watch.close()
    }
    const head = await archive.chainHead()
    if (head !== null) tell.entry({ event: 'head', ...head })
    tell.entry({ event: 'finished', breaks })
    return { breaks }
  } finally {
    await archive.close()
  }
}

/** The calibration that was named; else, where no scale was typed, the one in force; null: none. */
async function chosenCalibration(
  archive: Archive,
  calibrationId: number | null,
  nPerCount: number | null,
): Promise<Calibration | null> {
  if (calibrationId === null) return nPerCount === null ? calibrationInForce(archive) : null
  // Whoever names a calibration vouches for it, also one that was made on the virtual amplifier.
  return { ...(await archive.calibration(calibrationId)), device: 'serial' }
}

function aborted(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) resolve()
    else signal.addEventListener('abort', () => resolve(), { once: true })
  })
}
