// Held by tests/engine/createEngine.spec.ts.
import type { ByteSource } from '#acquisition/byteSource.ts'
import type { CaptureListener } from '#acquisition/captureEvents.ts'
import { startCaptureSession } from '#acquisition/captureSession.ts'
import type { BenchState, SignalState } from '#contract/bench/bench.ts'
import type { SourceChoice } from '#contract/bench/source.ts'
import type { ForceScale, ReadingUnit, Tare } from '#contract/calibration/forceScale.ts'
import { Trouble, troubleFrom } from '#contract/errors.ts'
import { connectDevice, disconnectDevice } from './connecting.ts'
import { deviceTrouble } from './deviceTrouble.ts'
import { type Connection, type Link, type LinkListener, type LinkParts, nothingConnected } from './link.ts'
import { renewIfChanged, renewSession } from './renewal.ts'
import { type SourceFacts, sourceFacts } from './sourceFacts.ts'

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

/** Joins source, capture session and silence watch; one device at a time. */
export function createDeviceLink(parts: LinkParts, listener: LinkListener): DeviceLink {
  const state = nothingConnected()
  const heard = sessionListener()
  const link: Link = {
    ...parts,
    state,
    listener,
    openSession: (facts) => startCaptureSession({ clock: parts.clock, ...facts, armed: state.armed, listener: heard }),
  }

  /** What the capture session tells goes on to the bench; the link keeps of it what it must know itself. */
  function sessionListener(): CaptureListener {
    return {
      ...listener,
      signal(next) {
        state.signal = next
        listener.signal(next)
      },
      begin(start) {
        state.capturing = true
        listener.begin(start)
      },
      end(result, ending) {
        state.capturing = false
        listener.end(result, ending)
        if (state.renewalIsDue) renewSession(link)
      },
      frame(frame) {
        state.connection?.silence.reading()
        listener.frame(frame)
      },
    }
  }

  function open(): Connection {
    if (state.connection !== null && state.status === 'open') return state.connection
    throw new Trouble('not-connected', 'No amplifier is connected.', 'Connect a port or the virtual amplifier first.')
  }

  const facts = () => state.connection?.facts ?? sourceFacts(null, null, parts.preferences(), parts.calibration())

  return {
    connect: (choice) => connectDevice(link, choice),
    disconnect: () => disconnectDevice(link),
    source: () => open().source,
    takeTare: () => open().session.takeTare(),
    arm(next) {
      state.armed = next
      state.connection?.session.arm(next)
      listener.changed()
    },
    preferencesChanged: () => renewIfChanged(link),
    connection: () => shownConnection(link),
    hearing: () => state.connection !== null && state.status === 'open' && !state.connection.silence.silent(),
    signal: () => state.signal,
    scale: () => facts().scaleFor(state.connection?.session.readingUnit() ?? 'counts'),
    readingUnit: () => state.connection?.session.readingUnit() ?? null,
    tare: () => state.connection?.session.tare() ?? null,
    armed: () => state.armed,
    capturing: () => state.capturing,
    facts,
  }
}

function shownConnection({ state }: Link): BenchState['connection'] {
  const { connection, status, problem, signal } = state
  const heard = status === 'open' ? (connection?.silence.problem() ?? deviceTrouble(signal)) : null
  return {
    status,
    source: connection?.choice ?? null,
    label: connection?.source.label ?? '',
    problem: problem ?? (heard === null ? null : troubleFrom(heard)),
  }
}
