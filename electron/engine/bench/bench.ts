// Held by tests/engine/createEngine.spec.ts.
import type { BenchState } from '#contract/bench/bench.ts'
import type { SourceChoice } from '#contract/bench/source.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import { keptSoFar } from '#domain/calibration/calibrationRows.ts'
import { createOutbox, type Outbox } from '../core/outbox.ts'
import { throttle } from '../core/throttle.ts'
import { benchEvents } from './benchEvents.ts'
import { createBenchOccupation, type Occupant, type Occupation } from './benchOccupation.ts'
import type { BenchParts } from './benchParts.ts'
import { benchState } from './benchState.ts'
import { createCaptureProgress } from './capture/captureProgress.ts'
import { createCaptureRecorder } from './capture/captureRecorder.ts'
import { createOnceEmpty } from './capture/onceEmpty.ts'
import { createShownOutcome } from './capture/shownOutcome.ts'
import { createSpecimenQueue } from './capture/specimenQueue.ts'
import { createDeviceLink, type DeviceLink } from './device/deviceLink.ts'
import { createSessionRecord } from './device/sessionRecord.ts'
import { isVirtual } from './device/sourceFacts.ts'
import { holdPress, loadVirtual, putVirtualWeights } from './device/virtualPress.ts'
import { taredN } from './taredReading.ts'
import { createOverloadWatch } from './warnings/overloadWatch.ts'
import { createStorageWatch } from './warnings/storageWatch.ts'
import { createTareWatch } from './warnings/tareWatch.ts'
import { createZeroMoved } from './warnings/zeroMoved.ts'

/** The bench: one device, one capture at a time, one specimen in the press. */
export type Bench = {
  state(): BenchState
  connect(choice: SourceChoice): Promise<void>
  disconnect(): Promise<void>
  tare(): void
  arm(armed: boolean): void
  /** null: none. `again`: although it broke before. */
  take(specimenId: number | null, again?: boolean): Promise<void>
  next(): Promise<void>
  loadVirtual(): void
  /** For the virtual amplifier: hangs weights of so many newtons on its cell. */
  putVirtualWeights(forceN: number): void
  /** Takes the bench for a calibration or a check; see BenchOccupation. The returned function gives it back. */
  occupy(what: Occupation, occupant: Occupant): () => void
  /** The device that is connected, for the record. Throws Trouble `not-connected`. */
  device(): { label: string; kind: SourceChoice['kind'] }
  readingUnit(): ReadingUnit | null
  /** How far a reading of the device lies from the zero, N; null: there is no zero or no scale. */
  taredN(reading: number): number | null
  /** Where all that is taken on the bench waits for the disk: captures, and the readings of a calibration or a check. */
  outbox: Pick<Outbox, 'put' | 'drained'>
  /** Specimens or breaks changed: reads again what it shows of them. */
  recordsChanged(): Promise<void>
  /** Preferences or the calibration in force are other ones. */
  preferencesChanged(): void
  /** Resolves when everything taken so far is on disk; rejects while it cannot be written. */
  written(): Promise<void>
  /** Ends a running capture as interrupted and waits until all is on disk; rejects when it is not. */
  close(): Promise<void>
}

/** What is shown is told at most so often, s. */
const tellEveryS = 0.1

/** Puts device, archive and specimens together. */
export function createBench(parts: BenchParts): Bench {
  const { archive, clock, emit } = parts
  const stateEvents = throttle(clock, tellEveryS, () => emit('bench.state', state()))
  const changed = () => stateEvents.ask()
  const theLink = (): DeviceLink => link
  const storage = createStorageWatch(emit, changed)
  const outbox = createOutbox({ clock, onProblem: storage.tell })
  const queue = createSpecimenQueue(archive, { enabled: parts.withSpecimens, invented: parts.demo }, changed)
  const outcome = createShownOutcome(clock, changed)
  const progress = createCaptureProgress(archive, () => link.capturing())
  const session = createSessionRecord({ ...parts, outbox })
  const occupation = createBenchOccupation({
    hearing: () => link.hearing(),
    capturing: () => link.capturing(),
    hasZero: () => link.tare() !== null,
    armed: () => link.armed(),
    arm: (armed) => link.arm(armed),
    holdPress: (held) => holdPress(link, held),
    changed,
  })
  const onceEmpty = createOnceEmpty({
    link: theLink,
    occupation,
    cleared() {
      // A specimen is spent only once its break is stored, so going on takes its turn behind that.
      if (parts.preferences().handsFree) outbox.put(() => queue.goOnIfSpent())
    },
  })
  const recorder = createCaptureRecorder({
    ...parts,
    ...{ outbox, queue, sessionId: session.id },
    onStored(breakId, summary, isNewest) {
      progress.stored(breakId, summary, isNewest)
      changed()
    },
  })
  const watches = { overload: createOverloadWatch(), tareWatch: createTareWatch(), zeroMoved: createZeroMoved() }
  const shown = { occupation, progress, outcome, ...watches }
  const link: DeviceLink = createDeviceLink(
    parts,
    benchEvents({ ...parts, ...shown, link: theLink, session, recorder, onceEmpty, changed }),
  )
  /** Nothing more is said of the break before. */
  const turnedTo = (specimen: Promise<void>) => specimen.then(() => outcome.show(null))
  const state = () => benchState({ ...shown, link, queue, storage }, parts.calibration(), clock.instant())

  return {
    state,
    async connect(choice) {
      occupation.lost(switched)
      watches.tareWatch.restart()
      watches.zeroMoved.forget()
      onceEmpty.connecting()
      await link.connect(choice)
      occupation.hold()
    },
    async disconnect() {
      occupation.lost(switched)
      await link.disconnect()
      progress.forgetPeak()
      outcome.show(null)
    },
    tare: link.takeTare,
    arm: occupation.arm,
    take: (specimenId, again = false) => turnedTo(queue.take(specimenId, again)),
    next: () => turnedTo(queue.goOn()),
    loadVirtual: () => loadVirtual(link.source(), occupation.busyWith() !== null),
    putVirtualWeights: (forceN) => putVirtualWeights(link.source(), forceN),
    occupy: occupation.take,
    device() {
      const source = link.source()
      return { label: source.label, kind: isVirtual(source) ? 'virtual' : 'serial' }
    },
    readingUnit: link.readingUnit,
    taredN: (reading) => taredN(link, reading),
    outbox,
    async recordsChanged() {
      await queue.refresh()
      await progress.refresh()
      changed()
    },
    preferencesChanged() {
      onceEmpty.preferencesChanged()
      changed()
    },
    written: () => outbox.drained(),
    async close() {
      await link.disconnect()
      outcome.stop()
      stateEvents.stop()
      await outbox.close()
    },
  }
}

/** What a calibration hears when the person turns to another device. */
const switched: TroubleMessage = {
  code: 'port-lost',
  message: 'The amplifier was disconnected.',
  hint: `Connect it again and go on with this step. ${keptSoFar}`,
}
