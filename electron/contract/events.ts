import * as z from 'zod'
import { benchEvents } from './bench/events.ts'
import { calibrationEvents } from './calibration/events.ts'
import { troubleMessage } from './errors.ts'
import { keepingEvents } from './keeping/events.ts'
import { settingsEvents } from './settings/events.ts'
import { topic } from './topics.ts'

/** Everything the engine says unasked, by name. */
export const events = {
  ...benchEvents,
  ...calibrationEvents,
  ...keepingEvents,
  ...settingsEvents,
  /** Something was written: what was read of these topics should be asked again. */
  'records.changed': z.strictObject({ topics: z.array(topic) }),
  /** A trouble that no caller is waiting for. */
  trouble: troubleMessage,
} as const satisfies Record<string, z.ZodType>

export type Events = typeof events
export type EventName = keyof Events
export type PayloadOf<N extends EventName> = z.output<Events[N]>
export type Emit = <N extends EventName>(name: N, payload: PayloadOf<N>) => void
