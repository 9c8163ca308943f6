import * as z from 'zod'
import { detectionSettings } from '../breaks/detection.ts'
import { finite, positive } from '../calibration/force.ts'
import { defaultPractices, testPractice } from './practice.ts'

export const lineFormatName = z.enum(['number', 'columns', 'checked'])

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
    path: z.string().min(1),
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
  }),
])
export type SourceChoice = z.infer<typeof sourceChoice>

/** The virtual bench of the demo: fast enough that a stranger sees a break at once, slow enough to watch it coming. */
export const demoSource: SourceChoice = sourceChoice.parse({ kind: 'virtual', speed: 3 })

/** What the program remembers for its user. Not a record: changed in place. */
export const preferences = z.strictObject({
  units: z.enum(['SI', 'US']),
  theme: z.enum(['system', 'light', 'dark']),
  sound: z.boolean(),
  /** Goes on to the next specimen by itself after a break. */
  handsFree: z.boolean(),
  operator: z.string().trim().max(200),
  capacityN: positive.nullable(),
  /** Typed scale until a calibration exists. */
  nPerCount: finite.nullable(),
  source: sourceChoice.nullable(),
  detection: detectionSettings.omit({ capacityN: true, startThresholdN: true }),
  cautionsRead: z.boolean(),
  /** Test practices to judge the loading by, and the name of the one that is chosen; null: none. */
  practices: z.array(testPractice).max(50),
  practice: z.string().nullable(),
})
export type Preferences = z.infer<typeof preferences>

/** No field has a default here, so that leaving one out changes nothing. */
export const preferencesChange = preferences.partial()

const { capacityN: _capacityN, startThresholdN: _startThresholdN, ...detection } = detectionSettings.parse({})

export const defaultPreferences: Preferences = {
  units: 'SI',
  theme: 'system',
  sound: false,
  handsFree: true,
  operator: '',
  capacityN: null,
  nPerCount: null,
  source: null,
  detection,
  cautionsRead: false,
  practices: [...defaultPractices],
  practice: defaultPractices[0]!.name,
}
