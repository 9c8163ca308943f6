import type { Calibration } from '#contract/calibration/calibration.ts'
import type { Emit } from '#contract/events.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import type { EngineParts } from '../core/engine.ts'
import type { CaptureLogEntry } from './capture/captureLog.ts'

/** What a bench is made of. */
export type BenchParts = Pick<EngineParts, 'archive' | 'clock' | 'openSource' | 'program'> & {
  emit: Emit
  log(entry: CaptureLogEntry): void
  preferences(): Preferences
  /** The calibration in force; null: none. */
  calibration(): Calibration | null
  /** False: captures belong to no specimen (unattended capture). */
  withSpecimens: boolean
  /** The archive is that of the demo, whose specimens are invented. */
  demo: boolean
}
