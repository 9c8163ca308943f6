import * as z from 'zod'
import { id, isoDate, isoInstant, kept } from '../values.ts'
import { ageMonths } from './study.ts'

/** The blocks of a study that were glued on one day and leave the store at one age. */
export const pullName = z.strictObject({
  studyId: id,
  /** null: whatever day they were glued on. */
  gluedOn: isoDate.nullable(),
  ageMonths,
})
export type PullName = z.infer<typeof pullName>

/** A person's word on a pull; the newest stands. */
export const pullDecision = z.strictObject({
  pullDecisionId: id,
  recordedAt: isoInstant,
  by: kept,
  reason: kept,
  ...pullName.shape,
  /** added: a pull that the plan did not have, made of spares. restored: as it was planned. */
  kind: z.enum(['moved', 'skipped', 'added', 'restored']),
  /** The day it is moved to or added for; null: as planned. */
  dueOn: isoDate.nullable(),
  /** How many blocks of each series an added pull takes; null: not an added one. */
  blocksPerSeries: z.int().positive().nullable(),
})
export type PullDecision = z.infer<typeof pullDecision>
