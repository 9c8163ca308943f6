import * as z from 'zod'
import { benchState, liveFrame } from './bench/bench.ts'
import { breakSummary } from './breaks/break.ts'
import { routineState } from './calibration/calibrationRoutine.ts'
import { checkState } from './calibration/checkWeight.ts'
import { troubleMessage } from './errors.ts'
import { preferences } from './settings/settings.ts'
import { progress } from './tasks.ts'

/** Everything the engine says unasked, by name. */
export const events = {
  'bench.state': benchState,
  'live.frame': liveFrame,
  'break.finished': breakSummary,
  /** Lists should be read again. */
  'records.changed': z.strictObject({ specimenIds: z.array(z.int()), breakIds: z.array(z.int()) }),
  'preferences.changed': preferences,
  'calibration.state': routineState,
  'checkWeight.state': checkState,
  /** Calibrations, or which of them is in force, should be read again. */
  'calibrations.changed': z.strictObject({ calibrationIds: z.array(z.int()) }),
  /** Re-evaluations should be read again. */
  'reevaluations.changed': z.strictObject({ reevaluationIds: z.array(z.int()) }),
  'task.progress': progress,
  /** A trouble that no caller is waiting for. */
  trouble: troubleMessage,
} as const satisfies Record<string, z.ZodType>

export type Events = typeof events
export type EventName = keyof Events
export type PayloadOf<N extends EventName> = z.output<Events[N]>
export type Emit = <N extends EventName>(name: N, payload: PayloadOf<N>) => void
