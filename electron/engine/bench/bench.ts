import { printableText } from '#acquisition/rejectedLines.ts'
import type { BenchPhase, BenchState, LiveFrame } from '#contract/bench/bench.ts'
import type { SourceChoice } from '#contract/bench/source.ts'
import type { BreakSummary } from '#contract/breaks/break.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { Trouble, type TroubleMessage } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import { isOverdue } from '#domain/calibration/dueDate.ts'
import type { EngineParts } from '../core/engine.ts'
import { createOutbox } from '../core/outbox.ts'
import { throttle } from '../core/throttle.ts'
import { createBenchOccupation, type Occupant, type Occupation } from './benchOccupation.ts'
import type { CaptureLogEntry } from './capture/captureLog.ts'
import { createCaptureRecorder } from './capture/captureRecorder.ts'
import { createSpecimenQueue } from './capture/specimenQueue.ts'
import { createDeviceLink } from './device/deviceLink.ts'
import { isVirtual } from './device/sourceFacts.ts'
import { createOverloadWatch } from './warnings/overloadWatch.ts'
import { createTareWatch } from './warnings/tareWatch.ts'

export type BenchParts = Pick<EngineParts, 'archive' | 'clock' | 'openSource' | 'program'> & {
  emit: Emit
  log(entry: CaptureLogEntry): void
  preferences(): Preferences
  /** The calibration in force; null: none. */
  calibration(): Calibration | null
  /** False: captures belong to no specimen (unattended capture). */
  withSpecimens: boolean
}

/** The bench: one device, one capture at a time, one specimen in the press. */
export type Bench = {
  state(): BenchState
  connect(choice: SourceChoice): Promise<void>
  disconnect(): Promise<void>
  tare(): void
  arm(armed: boolean): void
  take(specimenId: number | null): Promise<void>
  next(): Promise<void>
  loadVirtual(): void
  /** For the virtual amplifier: hangs weights of so many newtons on its cell. */
  putVirtualWeights(forceN: number): void
  /** Takes the bench for a calibration or a check; see BenchOccupation. The returned function gives it back. */
  occupy(what: Occupation, occupant: Occupant): () => void
  /** The device that is connected, for the record. Throws Trouble `not-connected`. */
  device(): { label: string; kind: SourceChoice['kind'] }
  readingUnit(): ReadingUnit | null
  /** Specimens or breaks changed: reads again what it shows of them. */
  recordsChanged(): Promise<void>
  /** Preferences or the calibration in force are other ones. */
  preferencesChanged(): void
  /** Resolves when everything captured so far is on disk; rejects while it cannot be written. */
  written(): Promise<void>
  /** Ends a running capture as interrupted and waits until all is on disk; rejects when it is not. */
  close(): Promise<void>
}

/** How long "broke at ..." stands before the bench says that it waits for the next one, if nothing happens, s. */
const outcomeShownS = 8
/** After a break the bench counts as empty when the force is below so many start thresholds. */
const emptyBelowThresholds = 3
/** Where no start threshold is known, so many noise SDs stand for it. */
const emptyBelowNoises = 15

/** Puts device, archive and specimens together. */
export function createBench(parts: BenchParts): Bench {
  const { archive, clock, emit, log } = parts
  const stateEvents = throttle(clock, 0.1, () => emit('bench.state', state()))
  const changed = () => stateEvents.ask()
  const outbox = createOutbox({ clock, onProblem: tellStorageProblem })
  const queue = createSpecimenQueue(archive, parts.withSpecimens, changed)
  const overload = createOverloadWatch()
  const tareWatch = createTareWatch()
  const occupation = createBenchOccupation({
    hearing: () => link.hearing(),
    capturing: () => link.capturing(),
    hasZero: () => link.tare() !== null,
    armed: () => link.armed(),
    arm: (armed) => link.arm(armed),
    holdPress(held) {
      const { status } = link.connection()
      const source = status === 'open' ? link.source() : null
      if (isVirtual(source)) source.holdPress(held)
    },
    changed,
  })

  let storageProblem: TroubleMessage | null = null
  let outcome: 'broke' | 'unloaded' | null = null
  let callOffOutcome: () => void = () => {}
  let awaitsEmptyBench = false
  let runningPeak: number | null = null
  let captureBreakId: number | null = null
  let lastBreak: BreakSummary | null = null
  let sessionId = 0
  let preferencesWait = false

  const recorder = createCaptureRecorder({
    archive,
    clock,
    outbox,
    queue,
    emit,
    log,
    sessionId: () => sessionId,
    onStored(breakId, summary) {
      if (summary === null) captureBreakId = link.capturing() ? breakId : null
      else {
        lastBreak = summary
        if (captureBreakId === breakId) captureBreakId = null
      }
      changed()
    },
  })

  const link = createDeviceLink(clock, parts.openSource, parts.preferences, parts.calibration, {
    reading: occupation.reading,
    changed,
    signal: changed,
    opening(source, { lineFormat }) {
      const session = {
        startedAt: clock.instant(),
        source: source.label,
        lineFormat: [lineFormat.name, ...lineFormat.columns].join(' '),
        program: parts.program,
      }
      outbox.put(async () => {
        sessionId = (await archive.beginSession(session)).sessionId
      })
    },
    connected(choice, source, { lineFormat }) {
      const path = choice.kind === 'serial' ? choice.path : source.label
      log({ event: 'connected', path, lineFormat: lineFormat.name })
    },
    lost(problem) {
      log({ event: 'disconnected' })
      occupation.lost(problem)
      emit('trouble', problem)
    },
    restored: () => log({ event: 'reconnected' }),
    tared({ offset, sd }) {
      tareWatch.restart()
      log({ event: 'tared', offset, sd })
      changed()
    },
    begin(start) {
      awaitsEmptyBench = false
      runningPeak = null
      overload.begin()
      showOutcome(null)
      recorder.begin(start, link.scale(), link.tare(), calibrationAtHand()?.assessment.result.verifiedRangeN ?? null)
    },
    samples: recorder.samples,
    end(result, ending) {
      awaitsEmptyBench = result.outcome === 'break'
      recorder.end(result, ending)
      showOutcome(result.outcome === 'break' ? 'broke' : 'unloaded')
    },
    frame(frame) {
      emit('live.frame', frame)
      if (link.capturing()) runningPeak = frame.peak
      if (frame.unit === 'N' && link.tare() !== null)
        overload.look(largest(frame.force), link.facts().settings.capacityN, clock.nowS(), link.capturing())
      tareWatch.frame(frame)
      if (occupation.busyWith() === null && (preferencesWait || occupation.awaitsEmpty()) && isFree(frame)) {
        occupation.empty()
        if (preferencesWait) link.preferencesChanged()
        preferencesWait = false
      }
      if (awaitsEmptyBench && isEmpty(frame)) {
        awaitsEmptyBench = false
        // A specimen is spent only once its break is stored, so going on takes its turn behind that.
        if (parts.preferences().handsFree) outbox.put(() => queue.goOnIfSpent())
      }
      changed()
    },
    gap: (timeS, missing) => log({ event: 'gap', timeS, missing }),
    rejected(count, example) {
      const recordedAt = clock.instant()
      outbox.put(() => archive.keepRejectedLines(sessionId, recordedAt, count, example))
      log({ event: 'rejected-line', count, example: printableText(example) })
    },
  })

  function tellStorageProblem(problem: TroubleMessage | null) {
    storageProblem = problem && {
      ...problem,
      message: `${problem.message} What is captured waits in memory until it can be written.`,
    }
    if (storageProblem !== null) emit('trouble', storageProblem)
    changed()
  }

  function showOutcome(shown: typeof outcome) {
    callOffOutcome()
    outcome = shown
    if (shown !== null) callOffOutcome = clock.after(outcomeShownS, () => showOutcome(null))
    changed()
  }

  function isEmpty({ latest }: LiveFrame): boolean {
    const { startThreshold } = link.signal()
    return latest !== null && (startThreshold === null || Math.abs(latest) < emptyBelowThresholds * startThreshold)
  }

  /** As isEmpty, for a bench that looks for no break and so has no threshold of its own. */
  function isFree({ latest }: LiveFrame): boolean {
    const { noise } = link.signal()
    const { capacityN, startCapacityShare } = link.facts().settings
    const least = Math.max(
      (capacityN ?? 0) * startCapacityShare * emptyBelowThresholds,
      (noise ?? 0) * emptyBelowNoises,
    )
    return latest !== null && Math.abs(latest) <= least
  }

  /** The calibration in force, where it holds for the readings that come. */
  function calibrationAtHand(): Calibration | null {
    const scale = link.scale()
    const calibration = parts.calibration()
    return scale.kind === 'calibration' && scale.calibrationId === calibration?.calibrationId ? calibration : null
  }

  function calibrationShown(): BenchState['calibration'] {
    const calibration = calibrationAtHand()
    if (calibration === null) return null
    const { calibrationId, name, dueOn, assessment } = calibration
    const { verifiedRangeN } = assessment.result
    return { calibrationId, name, verifiedRangeN, dueOn, overdue: isOverdue(dueOn, clock.instant()) }
  }

  function tareWarning(): string | null {
    const { unstableBecause, startThreshold } = link.signal()
    const idle = !link.capturing() && occupation.busyWith() === null
    const steady = unstableBecause === null
    const unit = link.scale().kind === 'none' ? 'counts' : 'N'
    return tareWatch.warning(link.tare(), clock.instant(), { idle, steady, startThreshold, unit })
  }

  function phase(): BenchPhase {
    if (link.capturing()) return 'loading'
    if (!link.hearing()) return 'no-signal'
    if (outcome !== null) return outcome
    return link.tare() === null ? 'settling' : 'waiting'
  }

  function state(): BenchState {
    return {
      connection: link.connection(),
      phase: phase(),
      armed: link.armed(),
      signal: link.signal(),
      scale: link.scale(),
      calibration: calibrationShown(),
      capacityN: link.facts().settings.capacityN,
      tare: link.tare(),
      tareWarning: tareWarning(),
      busyWith: occupation.busyWith(),
      overload: overload.level(),
      capacityShare: overload.share(),
      runningPeak,
      captureBreakId,
      specimen: queue.current(),
      next: queue.next(),
      waitingSpecimens: queue.waiting(),
      lastBreak,
      storageProblem,
    }
  }

  return {
    state,
    async connect(choice) {
      occupation.lost(switched)
      tareWatch.restart()
      preferencesWait = false
      await link.connect(choice)
      if (occupation.busyWith() !== null) occupation.hold()
    },
    async disconnect() {
      occupation.lost(switched)
      await link.disconnect()
      runningPeak = null
      showOutcome(null)
    },
    tare: link.takeTare,
    arm: occupation.arm,
    async take(specimenId) {
      await queue.take(specimenId)
      showOutcome(null)
    },
    async next() {
      await queue.goOn()
      showOutcome(null)
    },
    loadVirtual() {
      const source = link.source()
      if (!isVirtual(source))
        throw new Trouble(
          'unsupported',
          'Only the virtual amplifier can load a specimen by itself.',
          'Turn the press, or connect the virtual amplifier.',
        )
      if (occupation.busyWith() !== null)
        throw new Trouble('conflict', 'The bench is being calibrated or checked.', 'Finish that first.')
      source.loadNow()
    },
    putVirtualWeights(forceN) {
      const source = link.source()
      if (!isVirtual(source))
        throw new Trouble(
          'unsupported',
          'Only the virtual amplifier can hang weights by itself.',
          'Hang the weights on the cell, or connect the virtual amplifier.',
        )
      source.putWeights(forceN)
    },
    occupy: occupation.take,
    device() {
      const source = link.source()
      return { label: source.label, kind: isVirtual(source) ? 'virtual' : 'serial' }
    },
    readingUnit: link.readingUnit,
    async recordsChanged() {
      await queue.refresh()
      if (lastBreak !== null) lastBreak = (await archive.break(lastBreak.breakId)).summary
      changed()
    },
    preferencesChanged() {
      // A new stretch of the stream takes its zero anew, and there may be weights on the cell now.
      preferencesWait = occupation.busyWith() !== null || occupation.awaitsEmpty()
      if (!preferencesWait) link.preferencesChanged()
      changed()
    },
    written: outbox.drained,
    async close() {
      await link.disconnect()
      callOffOutcome()
      stateEvents.stop()
      await outbox.close()
    },
  }
}

/** What a calibration hears when the person turns to another device. */
const switched: TroubleMessage = {
  code: 'port-lost',
  message: 'The device was disconnected.',
  hint: 'Connect it again and go on with this step. The readings so far are kept.',
}

/** The force that is farthest from zero. */
function largest(force: Float64Array): number {
  let found = 0
  for (const value of force) if (Math.abs(value) > Math.abs(found)) found = value
  return found
}
