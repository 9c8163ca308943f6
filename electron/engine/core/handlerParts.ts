import type { Archive } from '#archive/archive.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { Emit } from '#contract/events.ts'
import type { ParsedInputOf } from '#contract/procedures.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import type { Bench } from '../bench/bench.ts'
import type { EngineParts } from './engine.ts'
import type { LongTasks } from './longTask.ts'

/** What every group of procedures is made of. */
export type HandlerParts = Omit<EngineParts, 'openSource'> & {
  archive: Archive
  bench: Bench
  emit: Emit
  tasks: LongTasks
  preferences(): Preferences
  /** The calibration in force; null: none. */
  inForce(): Calibration | null
  /** Another calibration was put in force: the bench goes on under it. */
  calibrationChanged(): Promise<void>
  /** Fields that are left out, or undefined, stay as they are. */
  changePreferences(change: ParsedInputOf<'preferences.set'>): Promise<Preferences>
  /** Tells everybody that lists must be read again, and brings the bench up to date. */
  recordsChanged(specimenIds: number[], breakIds: number[]): Promise<void>
}
