import type { ByteSource } from '#acquisition/byteSource.ts'
import type { CaptureListener } from '#acquisition/captureEvents.ts'
import { type RunningSession, startCaptureSession } from '#acquisition/captureSession.ts'
import type { Clock } from '#acquisition/clock.ts'
import type { BenchState, SignalState } from '#contract/bench/bench.ts'
import type { SourceChoice } from '#contract/bench/source.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { ForceScale, ReadingUnit, Tare } from '#contract/calibration/forceScale.ts'
import { Trouble, type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import type { EngineParts } from '../../core/engine.ts'
import { createSilenceWatch } from './silenceWatch.ts'
import { type SourceFacts, sourceFacts } from './sourceFacts.ts'

/** What the link tells of its device, besides what the capture session says. */
export type LinkListener = CaptureListener & {
  /** Before the first byte: what is going to be heard, for the record. */
  opening(source: ByteSource, facts: SourceFacts): void
  connected(choice: SourceChoice, source: ByteSource, facts: SourceFacts): void
  lost(problem: TroubleMessage): void
  restored(): void
  /** Anything that the link shows has changed. */
  changed(): void
}

/** One device and the capture session on its stream. */
export type DeviceLink = {
  connect(choice: SourceChoice): Promise<void>
  disconnect(): Promise<void>
  /** The open source. Throws Trouble `not-connected`. */
  source(): ByteSource
  takeTare(): void
  arm(armed: boolean): void
  /** Preferences, or the calibration in force, changed: the stream goes on under new ones, once no capture runs. */
  preferencesChanged(): void
  connection(): BenchState['connection']
  /** Open, and readings come. */
  hearing(): boolean
  signal(): SignalState
  scale(): ForceScale
  /** null before the first reading. */
  readingUnit(): ReadingUnit | null
  tare(): Tare | null
  armed(): boolean
  capturing(): boolean
  facts(): SourceFacts
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
const newSignal: SignalState = { ...noSignal, unstableBecause: 'the signal has just begun' }

/** Joins source, capture session and silence watch; one device at a time. */
export function createDeviceLink(
  clock: Clock,
  openSource: EngineParts['openSource'],
  preferences: () => Preferences,
  calibration: () => Calibration | null,
  listener: LinkListener,
): DeviceLink {
  let connection: Connection | null = null
  let status: BenchState['connection']['status'] = 'closed'
  let problem: TroubleMessage | null = null
  let signal = noSignal
  let armed = true
  let capturing = false
  let renewalIsDue = false

  const heard: CaptureListener = {
    ...listener,
    signal(next) {
      signal = next
      listener.signal(next)
    },
    begin(start) {
      capturing = true
      listener.begin(start)
    },
    end(result, ending) {
      capturing = false
      listener.end(result, ending)
      if (renewalIsDue) renew()
    },
    frame(frame) {
      connection?.silence.reading()
      listener.frame(frame)
    },
  }

  const openSession = (facts: SourceFacts) => startCaptureSession({ clock, ...facts, armed, listener: heard })

  function renew() {
    if (connection === null) return
    renewalIsDue = capturing
    if (capturing) return
    connection.session.stop()
    signal = newSignal
    connection.facts = sourceFacts(connection.choice, connection.source, preferences(), calibration())
    connection.session = openSession(connection.facts)
    listener.changed()
  }

  async function disconnect() {
    const leaving = connection
    if (leaving === null) return
    await leaving.source.close()
    if (connection !== leaving) return
    renewalIsDue = false
    leaving.session.stop()
    leaving.silence.stop()
    connection = null
    status = 'closed'
    problem = null
    signal = noSignal
    listener.changed()
  }

  async function connect(choice: SourceChoice) {
    await disconnect()
    const source = openSource(choice, clock)
    const facts = sourceFacts(choice, source, preferences(), calibration())
    listener.opening(source, facts)
    const silence = createSilenceWatch(
      clock,
      facts.lineFormat,
      choice.kind === 'serial' ? choice.baudRate : null,
      listener.changed,
    )
    const opened: Connection = { choice, source, facts, session: openSession(facts), silence }
    connection = opened
    status = 'opening'
    problem = null
    signal = newSignal
    listener.changed()
    try {
      await source.open({
        bytes(chunk, arrivalS) {
          silence.bytes(chunk)
          opened.session.bytes(chunk, arrivalS)
        },
        lost(trouble) {
          status = 'lost'
          problem = troubleFrom(trouble)
          opened.session.interrupted()
          listener.lost(problem)
          listener.changed()
        },
        restored() {
          status = 'open'
          problem = null
          opened.session.resumed()
          listener.restored()
          listener.changed()
        },
        ended() {
          status = 'closed'
          opened.session.stop()
          listener.changed()
        },
      })
    } catch (thrown) {
      silence.stop()
      if (connection === opened) {
        connection = null
        status = 'closed'
        problem = troubleFrom(thrown)
        listener.changed()
      }
      throw thrown
    }
    if (status === 'opening') status = 'open'
    listener.connected(choice, source, facts)
    listener.changed()
  }

  function open(): Connection {
    if (connection !== null && status === 'open') return connection
    throw new Trouble('not-connected', 'No device is connected.', 'Connect a port or the virtual amplifier first.')
  }

  const facts = () => connection?.facts ?? sourceFacts(null, null, preferences(), calibration())

  return {
    connect,
    disconnect,
    source: () => open().source,
    takeTare: () => open().session.takeTare(),
    arm(next) {
      armed = next
      connection?.session.arm(next)
      listener.changed()
    },
    preferencesChanged() {
      if (connection === null) return
      const { settings, scaleFor } = connection.facts
      const after = sourceFacts(connection.choice, connection.source, preferences(), calibration())
      const unit = connection.session.readingUnit() ?? 'counts'
      const told = JSON.stringify([settings, scaleFor(unit)])
      if (told !== JSON.stringify([after.settings, after.scaleFor(unit)])) renew()
    },
    connection: () => ({
      status,
      source: connection?.choice ?? null,
      label: connection?.source.label ?? '',
      problem: problem ?? (status === 'open' ? unreadable(connection) : null),
    }),
    hearing: () => connection !== null && status === 'open' && !connection.silence.silent(),
    signal: () => signal,
    scale: () => facts().scaleFor(connection?.session.readingUnit() ?? 'counts'),
    readingUnit: () => connection?.session.readingUnit() ?? null,
    tare: () => connection?.session.tare() ?? null,
    armed: () => armed,
    capturing: () => capturing,
    facts,
  }
}

function unreadable(connection: Connection | null): TroubleMessage | null {
  const trouble = connection?.silence.problem() ?? null
  return trouble === null ? null : troubleFrom(trouble)
}
