import type { ByteSource } from '#acquisition/byteSource.ts'
import type { CaptureListener } from '#acquisition/captureEvents.ts'
import { type RunningSession, startCaptureSession } from '#acquisition/captureSession.ts'
import { Trouble, type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import type { BenchPhase, BenchState, SignalState } from '#contract/records/bench.ts'
import type { BreakSummary } from '#contract/records/break.ts'
import type { Tare } from '#contract/records/force.ts'
import type { Preferences, SourceChoice } from '#contract/records/settings.ts'
import type { CaptureLogEntry } from './captureLog.ts'
import { createCaptureRecorder } from './captureRecorder.ts'
import type { EngineParts } from './engine.ts'
import { createOutbox } from './outbox.ts'
import { createOverloadWatch } from './overloadWatch.ts'
import { createSilenceWatch } from './silenceWatch.ts'
import { isVirtual, type SourceFacts, sourceFacts } from './sourceFacts.ts'
import { createSpecimenQueue } from './specimenQueue.ts'
import { throttle } from './throttle.ts'

export type BenchParts = Pick<EngineParts, 'archive' | 'clock' | 'openSource' | 'program'> & {
  emit: Emit
  log(entry: CaptureLogEntry): void
  preferences(): Preferences
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
  /** Preferences, specimens or breaks changed: reads again what it shows of them. */
  recordsChanged(): Promise<void>
  preferencesChanged(): void
  /** Resolves when everything captured so far is on disk. */
  written(): Promise<void>
  /** Ends a running capture as interrupted and waits until all is on disk; rejects when it is not. */
  close(): Promise<void>
}

type Connection = {
  choice: SourceChoice
  source: ByteSource
  facts: SourceFacts
  session: RunningSession
  silence: ReturnType<typeof createSilenceWatch>
}

const noSignal: SignalState = {
  sampleRateHz: null,
  jitterS: null,
  clock: null,
  missingSamples: 0,
  rejectedLines: 0,
  rejectedExample: null,
  noise: null,
  startThreshold: null,
  unstableBecause: 'nothing is connected',
}

/** How long "broke at ..." stands before the bench says that it waits for the next one, if nothing happens, s. */
const outcomeShownS = 8

/** Puts source, capture session, archive and specimens together. */
export function createBench(parts: BenchParts): Bench {
  const { archive, clock, emit, log } = parts
  const outbox = createOutbox({
    clock,
    onProblem(problem) {
      storageProblem = problem && {
        ...problem,
        message: `${problem.message} What is captured waits in memory until it can be written.`,
      }
      if (storageProblem !== null) emit('trouble', storageProblem)
      changed()
    },
  })
  const queue = createSpecimenQueue(archive, parts.withSpecimens, changed)
  const overload = createOverloadWatch()
  const stateEvents = throttle(clock, 0.1, () => emit('bench.state', state()))

  let connection: Connection | null = null
  let status: BenchState['connection']['status'] = 'closed'
  let problem: TroubleMessage | null = null
  let storageProblem: TroubleMessage | null = null
  let signal = noSignal
  let tare: Tare | null = null
  let armed = true
  let capturing = false
  let outcome: 'broke' | 'unloaded' | null = null
  let callOffOutcome: () => void = () => {}
  let awaitsZero = false
  let sessionChanges = false
  let runningPeak: number | null = null
  let captureBreakId: number | null = null
  let lastBreak: BreakSummary | null = null
  let sessionId = 0

  function changed() {
    stateEvents.ask()
  }

  function phase(): BenchPhase {
    if (connection === null || status !== 'open') return 'no-signal'
    if (capturing) return 'loading'
    if (connection.silence.silent()) return 'no-signal'
    if (outcome !== null) return outcome
    return tare === null ? 'settling' : 'waiting'
  }

  function state(): BenchState {
    const facts = connection?.facts ?? sourceFacts(null, null, parts.preferences())
    return {
      connection: {
        status,
        source: connection?.choice ?? null,
        label: connection?.source.label ?? '',
        problem: problem ?? troubleOrNull(connection?.silence.problem()),
      },
      phase: phase(),
      armed,
      signal,
      scale: facts.scaleFor(connection?.session.readingUnit() ?? 'counts'),
      capacityN: facts.settings.capacityN,
      tare,
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

  const recorder = createCaptureRecorder({
    archive,
    clock,
    outbox,
    queue,
    emit,
    log,
    sessionId: () => sessionId,
    onStored(breakId, summary) {
      if (summary === null) captureBreakId = capturing ? breakId : null
      else {
        lastBreak = summary
        if (captureBreakId === breakId) captureBreakId = null
      }
      changed()
    },
  })

  function showOutcome(shown: 'broke' | 'unloaded' | null) {
    callOffOutcome()
    outcome = shown
    if (shown !== null) callOffOutcome = clock.after(outcomeShownS, () => showOutcome(null))
    changed()
  }

  function listenerOf(session: () => RunningSession): CaptureListener {
    return {
      signal(next) {
        signal = next
        changed()
      },
      tared(taken) {
        tare = taken
        log({ event: 'tared', offset: taken.offset, sd: taken.sd })
        changed()
      },
      begin(start) {
        capturing = true
        awaitsZero = false
        runningPeak = null
        overload.begin()
        showOutcome(null)
        recorder.begin(start, session().scale(), session().tare())
      },
      samples: recorder.samples,
      end(result, ending) {
        capturing = false
        awaitsZero = result.outcome === 'break'
        recorder.end(result, ending)
        showOutcome(result.outcome === 'break' ? 'broke' : 'unloaded')
        if (sessionChanges) renewSession()
      },
      frame(frame) {
        connection?.silence.reading()
        emit('live.frame', frame)
        if (frame.peak !== null && capturing) runningPeak = frame.peak
        watchLoad(frame.force, frame.unit)
        if (awaitsZero && frame.latest !== null && isNearZero(frame.latest)) {
          awaitsZero = false
          if (parts.preferences().handsFree) inBackground(goOnWhenStored())
        }
        changed()
      },
      gap: (timeS, missing) => log({ event: 'gap', timeS, missing }),
      rejected(count, example) {
        const recordedAt = clock.instant()
        outbox.put(() => archive.keepRejectedLines(sessionId, recordedAt, count, example))
        log({ event: 'rejected-line', count, example: printable(example) })
      },
    }
  }

  /** A specimen is spent only once its break is stored, so going on takes its turn behind that. */
  function goOnWhenStored() {
    return new Promise<void>((resolve, reject) =>
      outbox.put(async () => {
        await queue.goOnIfSpent().then(resolve, reject)
      }),
    )
  }

  function watchLoad(force: Float64Array, unit: 'N' | 'counts') {
    if (connection === null || tare === null || unit !== 'N') return
    let largest = 0
    for (const value of force) if (Math.abs(value) > Math.abs(largest)) largest = value
    overload.look(largest, connection.facts.settings.capacityN, clock.nowS(), capturing)
  }

  function isNearZero(force: number): boolean {
    return signal.startThreshold === null || Math.abs(force) < 3 * signal.startThreshold
  }

  function openSession(facts: SourceFacts): RunningSession {
    const session: RunningSession = startCaptureSession({ clock, ...facts, armed, listener: listenerOf(() => session) })
    return session
  }

  /** The scale or the thresholds changed: the stream goes on under new ones, and the zero is taken anew. */
  function renewSession() {
    if (connection === null) return
    sessionChanges = capturing
    if (capturing) return
    connection.session.stop()
    tare = null
    signal = { ...noSignal, unstableBecause: 'the signal has just begun' }
    connection.facts = sourceFacts(connection.choice, connection.source, parts.preferences())
    connection.session = openSession(connection.facts)
    changed()
  }

  function inBackground(work: Promise<unknown>) {
    work.catch((thrown: unknown) => emit('trouble', troubleFrom(thrown)))
  }

  async function disconnect() {
    const leaving = connection
    if (leaving === null) return
    await leaving.source.close()
    if (connection !== leaving) return
    leaving.session.stop()
    leaving.silence.stop()
    connection = null
    status = 'closed'
    problem = null
    signal = noSignal
    tare = null
    runningPeak = null
    showOutcome(null)
  }

  async function connect(choice: SourceChoice) {
    await disconnect()
    const source = parts.openSource(choice, clock)
    const facts = sourceFacts(choice, source, parts.preferences())
    const silence = createSilenceWatch(clock, facts.lineFormat, changed)
    const opened: Connection = { choice, source, facts, session: openSession(facts), silence }
    connection = opened
    status = 'opening'
    problem = null
    signal = { ...noSignal, unstableBecause: 'the signal has just begun' }
    changed()
    const startedAt = clock.instant()
    outbox.put(async () => {
      const lineFormat = [facts.lineFormat.name, ...facts.lineFormat.columns].join(' ')
      const stored = await archive.beginSession({ startedAt, source: source.label, lineFormat, program: parts.program })
      sessionId = stored.sessionId
    })
    try {
      await source.open({
        bytes(chunk, arrivalS) {
          silence.bytes(chunk.length)
          opened.session.bytes(chunk, arrivalS)
        },
        lost(trouble) {
          opened.session.interrupted()
          status = 'lost'
          problem = troubleFrom(trouble)
          tare = null
          log({ event: 'disconnected' })
          emit('trouble', problem)
          changed()
        },
        restored() {
          opened.session.resumed()
          status = 'open'
          problem = null
          log({ event: 'reconnected' })
          changed()
        },
        ended() {
          opened.session.stop()
          status = 'closed'
          changed()
        },
      })
    } catch (thrown) {
      silence.stop()
      if (connection === opened) {
        connection = null
        status = 'closed'
        problem = troubleFrom(thrown)
        changed()
      }
      throw thrown
    }
    status = 'open'
    const path = choice.kind === 'serial' ? choice.path : source.label
    log({ event: 'connected', path, lineFormat: facts.lineFormat.name })
    changed()
  }

  function connected(): Connection {
    if (connection !== null && status === 'open') return connection
    throw new Trouble('not-connected', 'No device is connected.', 'Connect a port or the virtual amplifier first.')
  }

  return {
    state,
    connect,
    disconnect,
    tare: () => connected().session.takeTare(),
    arm(next) {
      armed = next
      connection?.session.arm(next)
      changed()
    },
    async take(specimenId) {
      await queue.take(specimenId)
      if (!capturing) showOutcome(null)
    },
    async next() {
      await queue.goOn()
      if (!capturing) showOutcome(null)
    },
    loadVirtual() {
      const { source } = connected()
      if (!isVirtual(source))
        throw new Trouble(
          'unsupported',
          'Only the virtual amplifier can load a specimen by itself.',
          'Turn the press, or connect the virtual amplifier.',
        )
      source.loadNow()
    },
    async recordsChanged() {
      await queue.refresh()
      if (lastBreak !== null) lastBreak = (await archive.break(lastBreak.breakId)).summary
      changed()
    },
    preferencesChanged() {
      const before = connection?.facts
      if (before === undefined || connection === null) return changed()
      const after = sourceFacts(connection.choice, connection.source, parts.preferences())
      const same =
        JSON.stringify([before.settings, before.scaleFor('counts')]) ===
        JSON.stringify([after.settings, after.scaleFor('counts')])
      if (same) changed()
      else renewSession()
    },
    written: outbox.drained,
    async close() {
      await disconnect()
      callOffOutcome()
      stateEvents.stop()
      await outbox.close()
    },
  }
}

const troubleOrNull = (trouble: Trouble | null | undefined) => (trouble ? troubleFrom(trouble) : null)

/** Bytes as people can read them: what is no printable ASCII becomes a middle dot. */
function printable(bytes: Uint8Array): string {
  return [...bytes].map((byte) => (byte >= 32 && byte < 127 ? String.fromCharCode(byte) : '·')).join('')
}
