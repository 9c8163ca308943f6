import * as z from 'zod'
import { forceScale, readingUnit, tare } from '../calibration/forceScale.ts'
import { id, isoInstant } from '../values.ts'
import { detectionSettings } from './detection.ts'

/** What is known when a capture begins. Written before its first sample. */
export const breakHeader = z.strictObject({
  breakId: id,
  sessionId: id,
  specimenId: id.nullable(),
  startedAt: isoInstant,
  readingUnit,
  scale: forceScale,
  tare: tare.nullable(),
  settings: detectionSettings,
})
export type BreakHeader = z.infer<typeof breakHeader>

/** complete: ended by the detector. interrupted: the device went away. recovered: the program ended while it ran. */
export const ending = z.enum(['complete', 'interrupted', 'recovered'])
export type Ending = z.infer<typeof ending>

export const breakEnd = z.strictObject({
  breakId: id,
  endedAt: isoInstant,
  ending,
  samples: z.int().nonnegative(),
  missingSamples: z.int().nonnegative(),
  /** SHA-256, hex, over times and readings as FORMAT.md states. */
  curveSha256: z.string().regex(/^[0-9a-f]{64}$/),
})
export type BreakEnd = z.infer<typeof breakEnd>
