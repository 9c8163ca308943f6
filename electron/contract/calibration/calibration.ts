import * as z from 'zod'
import { id, isoDate, isoInstant, kept } from '../values.ts'
import { calibrationAssessment, creepResult } from './calibrationAssessment.ts'
import { readingUnit } from './forceScale.ts'
import { loadingCircumstances } from './loading.ts'
import { calibrationReading, calibrationRow } from './reading.ts'
import { weight } from './weight.ts'

/** A calibration as stored: with every raw reading; never changed, only superseded. */
export const calibration = z.strictObject({
  calibrationId: id,
  name: kept.min(1),
  madeAt: isoInstant,
  by: kept,
  supersedes: id.nullable(),
  dueOn: isoDate.nullable(),
  /** Where the readings came from: a device in words, or a file. */
  source: kept,
  /** For which kind of device it holds: the virtual amplifier's cell is not the one on the bench. */
  device: z.enum(['serial', 'virtual']),
  readingUnit,
  /** null where only forces were known, as from a calibration file. */
  circumstances: loadingCircumstances.nullable(),
  weights: z.array(weight),
  readings: z.array(calibrationReading),
  /** The rows that were fitted; from a file these are its lines. */
  rows: z.array(calibrationRow),
  creep: z.array(creepResult),
  assessment: calibrationAssessment,
  note: kept,
})
export type Calibration = z.infer<typeof calibration>
