import * as z from 'zod'
import { finite, id, isoInstant, kept } from '../values.ts'

/** Why a break is set aside. */
export const setAsideCause = z.enum(['specimen-slipped', 'wrong-block', 'fixture-touched', 'other'])
export type SetAsideCause = z.infer<typeof setAsideCause>

/** A sample of the raw curve: its time, s, and its reading in the header's unit, so that any scale gives its force. */
export const pickedSample = z.strictObject({ timeS: finite, reading: finite })
export type PickedSample = z.infer<typeof pickedSample>

/** Whether such a word names a sample that stands for the failure load. */
export function namesPeak(kind: string): boolean {
  return kind === 'peak-picked' || kind === 'premature-failure'
}

/**
 * A person's word on a break: set aside (not used in results), taken back in, moved to another specimen; the peak picked
 * by hand, the load of an early drop declared the failure, or the peak again as it was found. The newest of those that
 * speak of the same thing decides.
 */
export const decision = z
  .strictObject({
    decisionId: id,
    breakId: id,
    recordedAt: isoInstant,
    by: kept.min(1),
    reason: kept.min(1),
    kind: z.enum(['set-aside', 'taken-back', 'reassigned', 'peak-picked', 'premature-failure', 'peak-as-found']),
    specimenId: id.nullable(),
    /** set-aside: what happened; null: it was not asked then. */
    cause: setAsideCause.nullable().default(null),
    /** peak-picked and premature-failure: the sample that stands for the failure load. */
    sample: pickedSample.nullable().default(null),
  })
  .refine(({ kind, sample }) => namesPeak(kind) === (sample !== null), {
    path: ['sample'],
    error: 'a sample belongs to a word that puts it in place of the peak, and to no other',
  })
  .refine(({ kind, cause }) => kind === 'set-aside' || cause === null, {
    path: ['cause'],
    error: 'a cause belongs to a break that is set aside',
  })
export type Decision = z.infer<typeof decision>
/** A decision before the archive has numbered it; what it does not have may be left out. */
export type NewDecision = Omit<z.input<typeof decision>, 'decisionId'>

/** A person's word in place of the peak found, by the scale in force. */
export const overruledPeak = z.strictObject({
  kind: z.enum(['peak-picked', 'premature-failure']),
  by: kept,
  reason: kept,
  recordedAt: isoInstant,
  timeS: finite,
  /** The peak that the evaluation in force found, N. */
  foundPeakN: finite.nullable(),
})
export type OverruledPeak = z.infer<typeof overruledPeak>
