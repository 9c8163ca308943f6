import * as z from 'zod'
import { finite, place } from '../values.ts'

export const lineFormatName = z.enum(['number', 'columns', 'checked', 'crc'])

/** One name per delimited column, left to right; "-" skips it. */
export const columnName = z.enum(['time_us', 'time_ms', 'time_s', 'seq', 'counts', 'force_N', '-'])
export type ColumnName = z.infer<typeof columnName>

export const lineFormatChoice = z.strictObject({
  name: lineFormatName,
  /** Only for `columns`. */
  columns: z.array(columnName).default([]),
})
export type LineFormatChoice = z.infer<typeof lineFormatChoice>

export const scenarioName = z.enum([
  'brittle',
  'progressive',
  'pop-in',
  'stick-slip',
  'hand-pumped',
  'plateau',
  'held',
  'unloading',
  'clipping',
  'glitches',
  'gaps',
  'idle',
  'mixed',
])
export type ScenarioName = z.infer<typeof scenarioName>

/** Which device to listen to. */
export const sourceChoice = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('serial'),
    path: place,
    baudRate: z.int().positive().default(115200),
    lineFormat: lineFormatChoice,
  }),
  z.strictObject({
    kind: z.literal('virtual'),
    scenario: scenarioName.default('mixed'),
    rateHz: finite.min(5).max(10_000).default(80),
    seed: z.int().nonnegative().default(1),
    /** Simulated seconds per real second. */
    speed: finite.positive().max(1000).default(1),
    /** Stops after so many breaks; null: goes on. */
    breaks: z.int().positive().nullable().default(null),
    /** Loads one specimen after the other; false: only when asked. */
    byItself: z.boolean().default(true),
  }),
])
export type SourceChoice = z.infer<typeof sourceChoice>

/**
 * The virtual bench of the demo: it loads when the person asks, fast enough that a stranger sees a break at once, slow enough
 * to watch it coming.
 */
export const demoSource: SourceChoice = sourceChoice.parse({ kind: 'virtual', speed: 3, byItself: false })
