import * as z from 'zod'
import { id, isoInstant, kept } from '../values.ts'
import { calibration } from './calibration.ts'
import { calibrationPlan } from './calibrationPlan.ts'
import { takenReading } from './reading.ts'

/** What is known when a guided calibration begins. */
export const begunRoutine = z.strictObject({
  routineId: id,
  begunAt: isoInstant,
  by: kept,
  source: kept,
  plan: calibrationPlan,
})
export type BegunRoutine = z.infer<typeof begunRoutine>

/** A reading as a record of its routine; `number` counts the readings of its routine from 0. */
export const routineReading = z.strictObject({
  readingId: id,
  routineId: id,
  number: z.int().nonnegative(),
  ...takenReading.shape,
})

/** A guided calibration that was broken off, and why. */
export const routineEnd = z.strictObject({ routineId: id, endedAt: isoInstant, reason: kept })

/** A calibration with the routine that its readings come from; null: they come from a file. */
export const calibrationOfRoutine = z.strictObject({ ...calibration.shape, routineId: id.nullable() })
