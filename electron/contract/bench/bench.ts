import * as z from 'zod'
import { breakSummary } from '../breaks/break.ts'
import { forceScale, readingUnit, tare } from '../calibration/forceScale.ts'
import { troubleMessage } from '../errors.ts'
import { specimenSummary } from '../specimens/specimenRecord.ts'
import { finite, id, isoDate } from '../values.ts'
import { lineFormatChoice, sourceChoice } from './source.ts'

export const serialPort = z.strictObject({
  path: z.string(),
  manufacturer: z.string().nullable(),
  serialNumber: z.string().nullable(),
  vendorId: z.string().nullable(),
  productId: z.string().nullable(),
})
export type SerialPortInfo = z.infer<typeof serialPort>

/** What was heard on a port during some seconds, and what it most likely is. */
export const listening = z.strictObject({
  lines: z.array(z.string()),
  bytes: z.int().nonnegative(),
  linesPerSecond: finite.nullable(),
  /** null: no format fits; then `advice` says what to try. */
  proposal: lineFormatChoice.nullable(),
  /** Share of lines that fit the proposal, 0 to 1. */
  fit: finite.min(0).max(1),
  advice: z.string(),
})
export type Listening = z.infer<typeof listening>

/**
 * What cannot be right about the numbers that a device gives its readings. `pace`: seconds of its clock in one of this
 * computer's, where its unit must be wrong; null: that says nothing.
 */
export const deviceFault = z.strictObject({
  kind: z.enum(['time-stands', 'time-falls', 'time-slow', 'time-fast', 'sequence-stands', 'sequence-falls']),
  pace: finite.nullable(),
})
export type DeviceFault = z.infer<typeof deviceFault>

/** The health of the sample stream. */
export const signalState = z.strictObject({
  sampleRateHz: finite.nullable(),
  jitterS: finite.nullable(),
  clock: z.enum(['device', 'arrival']).nullable(),
  missingSamples: z.int().nonnegative(),
  /** How often the device has restarted. */
  restarts: z.int().nonnegative(),
  /** Times of arrival stand for a time that is wrong, and steps of time for wrong sequence numbers. */
  deviceFaults: z.array(deviceFault),
  rejectedLines: z.int().nonnegative(),
  rejectedExample: z.string().nullable(),
  noise: finite.nullable(),
  /** Start threshold in force, in the same unit as noise. */
  startThreshold: finite.nullable(),
  /** null: steady enough to tare; else why not, in words. */
  unstableBecause: z.string().nullable(),
})
export type SignalState = z.infer<typeof signalState>

/** What a bench at rest reads that was zeroed. */
const readsAtRest = { reads: finite, unit: z.enum(['N', 'counts']) }

/** Why the zero should be taken again. */
export const tareWarning = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('far-below-zero'), ...readsAtRest }),
  z.strictObject({ kind: z.literal('drifted'), ...readsAtRest }),
  z.strictObject({ kind: z.literal('old'), minutes: z.int() }),
])
export type TareWarning = z.infer<typeof tareWarning>

/**
 * no-signal: nothing connected or nothing arrives. settling: signal seen, zero not taken yet. waiting: zero taken, ready.
 * loading: a capture runs. broke, unloaded: the last capture just ended so.
 */
export const benchPhase = z.enum(['no-signal', 'settling', 'waiting', 'loading', 'broke', 'unloaded'])
export type BenchPhase = z.infer<typeof benchPhase>

/** Everything the bench screen shows besides the live curve; sent whole whenever any of it changes. */
export const benchState = z.strictObject({
  connection: z.strictObject({
    status: z.enum(['closed', 'opening', 'open', 'lost']),
    source: sourceChoice.nullable(),
    label: z.string(),
    problem: troubleMessage.nullable(),
  }),
  phase: benchPhase,
  armed: z.boolean(),
  signal: signalState,
  scale: forceScale,
  /** The calibration in force on this device; null: forces are uncalibrated. */
  calibration: z
    .strictObject({
      calibrationId: id,
      name: z.string(),
      verifiedRangeN: z.tuple([finite, finite]).nullable(),
      dueOn: isoDate.nullable(),
      overdue: z.boolean(),
    })
    .nullable(),
  /** The calibration in force, where it is not used on what is connected, and why; null: it is used, or none is in force. */
  calibrationUnused: z
    .strictObject({
      calibrationId: id,
      name: z.string(),
      because: z.enum(['not-connected', 'other-device', 'other-unit']),
      /** What it was made with. */
      device: z.enum(['virtual', 'serial']),
      readingUnit: readingUnit,
    })
    .nullable(),
  capacityN: finite.nullable(),
  tare: tare.nullable(),
  /** Why the zero should be taken again; null: it is good. */
  tareWarning: tareWarning.nullable(),
  /** How far the zero lies from the one before it, where that is as much as a load; null: it is not. */
  zeroMoved: z.strictObject({ by: finite, unit: z.enum(['N', 'counts']) }).nullable(),
  /** A calibration or a check runs: no break is looked for meanwhile. The overload watch stays on. */
  busyWith: z.enum(['calibration', 'check-weight']).nullable(),
  /** warning: above 90 % of capacity. alarm: above 100 %. */
  overload: z.enum(['none', 'warning', 'alarm']),
  /** Highest share of capacity in this capture, 0 to 1 and above; null: capacity unknown. */
  capacityShare: finite.nullable(),
  runningPeak: finite.nullable(),
  captureBreakId: z.int().nullable(),
  /** The break that the newest capture became, once its record is stored: only then is `lastBreak` what `phase` speaks of. */
  outcomeBreakId: z.int().nullable(),
  specimen: specimenSummary.nullable(),
  /** The one at hand broke before, and the person put it in again: the next capture is of it all the same. */
  again: z.boolean(),
  next: specimenSummary.nullable(),
  waitingSpecimens: z.int().nonnegative(),
  /** The breaking session whose specimens come one after the other; null: whatever waits does, in order of number. */
  breaking: z
    .strictObject({
      breakingSessionId: id,
      title: z.string(),
      specimens: z.int().positive(),
      broken: z.int().nonnegative(),
      skipped: z.int().nonnegative(),
      withdrawn: z.int().nonnegative(),
    })
    .nullable(),
  lastBreak: breakSummary.nullable(),
  /** Why samples do not reach the disk (disk full, say); they wait in memory and are tried again. null: all is written. */
  storageProblem: troubleMessage.nullable(),
})
export type BenchState = z.infer<typeof benchState>

/** Live samples since the last frame, thinned by minimum and maximum; force in N after tare (counts where there is no scale). */
export const liveFrame = z.strictObject({
  timeS: z.instanceof(Float64Array),
  force: z.instanceof(Float64Array),
  unit: z.enum(['N', 'counts']),
  /** The newest force that can be load. */
  latest: finite.nullable(),
  /** Lowest and highest force that can be load, lone electrical glitches left out; null: none can. */
  loadRange: z.tuple([finite, finite]).nullable(),
  peak: finite.nullable(),
})
export type LiveFrame = z.infer<typeof liveFrame>
