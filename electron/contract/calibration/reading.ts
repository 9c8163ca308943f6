import * as z from 'zod'
import { finite, isoInstant } from '../values.ts'

export const loadDirection = z.enum(['up', 'down'])
export type LoadDirection = z.infer<typeof loadDirection>

/** One mean reading at one force: a line of a calibration CSV. */
export const calibrationRow = z.strictObject({
  run: z.int().positive(),
  direction: loadDirection,
  forceN: finite,
  reading: finite,
})
export type CalibrationRow = z.infer<typeof calibrationRow>

/**
 * One averaged window of the live signal, as taken. used: enters the fit. replaced: repeated by the reading named.
 * broken-off: belongs to a run that was not finished. None is ever removed.
 */
export const calibrationReading = z.strictObject({
  run: z.int().positive(),
  direction: loadDirection,
  weights: z.array(z.string()),
  forceN: finite,
  mean: finite,
  sd: finite.nonnegative(),
  count: z.int().positive(),
  takenAt: isoInstant,
  standing: z.enum(['used', 'replaced', 'broken-off']),
  /** Index in the list of readings; null unless replaced. */
  replacedBy: z.int().nonnegative().nullable(),
})
export type CalibrationReading = z.infer<typeof calibrationReading>

/** A reading when it is taken: whether it will count is not yet known. */
export const takenReading = calibrationReading.omit({ standing: true, replacedBy: true })
export type TakenReading = z.infer<typeof takenReading>
