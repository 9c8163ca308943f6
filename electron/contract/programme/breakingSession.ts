import * as z from 'zod'
import { id, isoInstant, kept } from '../values.ts'
import { pullName } from './pull.ts'

/** Specimens that are to be broken one after the other. */
export const breakingSession = z.strictObject({
  breakingSessionId: id,
  startedAt: isoInstant,
  by: kept,
  title: kept,
  pulls: z.array(pullName),
  /** In the order in which they are to be broken. */
  specimenIds: z.array(id),
})
export type BreakingSession = z.infer<typeof breakingSession>

/** What was done in a breaking session besides breaking. */
export const breakingSessionEvent = z.strictObject({
  breakingSessionEventId: id,
  breakingSessionId: id,
  recordedAt: isoInstant,
  by: kept,
  kind: z.enum(['skipped', 'ended', 'reopened']),
  /** The specimen that was skipped. */
  specimenId: id.nullable(),
  note: kept,
})
export type BreakingSessionEvent = z.infer<typeof breakingSessionEvent>
