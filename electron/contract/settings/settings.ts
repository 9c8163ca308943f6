import * as z from 'zod'
import { sourceChoice } from '../bench/source.ts'
import { detectionSettings } from '../breaks/detection.ts'
import { namedMapping } from '../specimens/importMapping.ts'
import { finite, positive, words } from '../values.ts'
import { chosenColumns, savedFilter } from './lists.ts'
import { defaultPractices, testPractice } from './practice.ts'

/** What the program remembers for its user. Not a record: changed in place. */
export const preferences = z.strictObject({
  units: z.enum(['SI', 'US']),
  theme: z.enum(['system', 'light', 'dark']),
  sound: z.boolean(),
  /** Goes on to the next specimen by itself after a break. */
  handsFree: z.boolean(),
  operator: words,
  capacityN: positive.nullable(),
  /** Typed scale until a calibration exists. */
  nPerCount: finite.nullable(),
  source: sourceChoice.nullable(),
  detection: detectionSettings.omit({ capacityN: true, startThresholdN: true }),
  cautionsRead: z.boolean(),
  /** Test practices to judge the loading by, and the name of the one that is chosen; null: none. */
  practices: z.array(testPractice).max(50),
  practice: words.nullable(),
  /** How tables of past results become blocks, to be used again. */
  importMappings: z.array(namedMapping).max(100),
  columns: chosenColumns,
  savedFilters: z.array(savedFilter).max(200),
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
  importMappings: [],
  columns: {},
  savedFilters: [],
}
