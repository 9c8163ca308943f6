import * as z from 'zod'
import { finite, positive } from '../values.ts'

const share = finite.gt(0).lt(1)

/** Thresholds of the break detector. Every stored evaluation carries the ones that made it. */
export const detectionSettings = z.strictObject({
  /** Rated load of cell, press or frame, whichever is least, N. null: unknown. */
  capacityN: positive.nullable().default(null),
  /** Start threshold: this many noise SDs ... */
  startNoiseMultiple: positive.default(5),
  /** ... or this share of capacity, whichever is larger. */
  startCapacityShare: share.default(0.002),
  /** Start threshold in force at capture, N; null: found from the samples before the load. */
  startThresholdN: positive.nullable().default(null),
  /** The force must stay above the start threshold for this long, s. */
  startHoldS: positive.default(0.05),
  /** Samples kept from before the start, s. */
  preTriggerS: positive.default(1),
  /** A break is a fall of at least this share of the running peak ... */
  breakDropShare: share.default(0.4),
  /** ... within this time, s. */
  breakDropWithinS: positive.default(0.25),
  /** Samples kept from after the break, s. */
  postBreakS: positive.default(0.5),
  /** The load has ended when it stays below this share of the peak ... */
  endShare: share.default(0.05),
  /** ... for this long, s. */
  endHoldS: positive.default(1),
  /** Lowest and highest code of the converter; null: unknown. */
  endCodes: z.tuple([finite, finite]).nullable().default(null),
  /** Settling time that the converter adds to the sample interval, s. */
  settlingTimeS: finite.nonnegative().default(0),
  /** Speed of the press, mm/s, where it is known and constant; the work to failure follows from it. null: unknown. */
  pressSpeedMmPerS: positive.nullable().default(null),
})
export type DetectionSettings = z.infer<typeof detectionSettings>

const { shape } = detectionSettings

/** Other thresholds for an evaluation; what is left out stays as it was at capture. No field has a default here. */
export const detectionChange = z.strictObject({
  capacityN: shape.capacityN.unwrap().optional(),
  startNoiseMultiple: shape.startNoiseMultiple.unwrap().optional(),
  startCapacityShare: shape.startCapacityShare.unwrap().optional(),
  startHoldS: shape.startHoldS.unwrap().optional(),
  breakDropShare: shape.breakDropShare.unwrap().optional(),
  breakDropWithinS: shape.breakDropWithinS.unwrap().optional(),
  postBreakS: shape.postBreakS.unwrap().optional(),
  endShare: shape.endShare.unwrap().optional(),
  endHoldS: shape.endHoldS.unwrap().optional(),
  endCodes: shape.endCodes.unwrap().optional(),
  settlingTimeS: shape.settlingTimeS.unwrap().optional(),
  pressSpeedMmPerS: shape.pressSpeedMmPerS.unwrap().optional(),
})
export type DetectionChange = z.infer<typeof detectionChange>
