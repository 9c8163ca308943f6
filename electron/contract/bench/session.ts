import * as z from 'zod'
import { id, isoInstant } from '../values.ts'

/** The circumstances of one connection to one device. */
export const captureSession = z.strictObject({
  sessionId: id,
  startedAt: isoInstant,
  /** Where the samples come from: a port path, or "virtual amplifier: brittle". */
  source: z.string(),
  lineFormat: z.string(),
  program: z.string(),
})
export type CaptureSession = z.infer<typeof captureSession>
