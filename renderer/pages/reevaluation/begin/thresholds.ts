import { type DetectionChange, type DetectionSettings, detectionChange } from '#contract/breaks/detection.ts'
import { withoutEndingZeros, writeFixed } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { readNumber } from '../../specimens/specimenForm.ts'

/** A threshold that an evaluation may change. The converter's end codes are two numbers and so two fields. */
export type ThresholdKey = Exclude<keyof DetectionChange, 'endCodes'> | 'lowestCode' | 'highestCode'
export type ThresholdTexts = Record<ThresholdKey, string>
export type ThresholdErrors = Partial<Record<ThresholdKey, string>>

type Kind = 'force' | 'share' | 'seconds' | 'multiple' | 'speed' | 'code'
type Threshold = {
  key: ThresholdKey
  label: string
  kind: Kind
  /** Its name within a sentence. */
  inWords: string
  /** May be written as "unknown". */
  mayBeUnknown?: boolean
  /** 0 is a sensible value. */
  mayBeZero?: boolean
}

/** Thresholds as they stand in the form: what they are about, and in which order. */
export const thresholdGroups: readonly { title: string; thresholds: readonly Threshold[] }[] = [
  {
    title: 'Where loading begins: the larger of two levels, for a time',
    thresholds: [
      { key: 'startNoiseMultiple', label: 'Above the noise', kind: 'multiple', inWords: 'start above noise' },
      { key: 'startCapacityShare', label: 'Of the rated load', kind: 'share', inWords: 'start above rated load share' },
      { key: 'startHoldS', label: 'Held for', kind: 'seconds', inWords: 'start held for' },
    ],
  },
  {
    title: 'What counts as a break: a fall from the highest load',
    thresholds: [
      { key: 'breakDropShare', label: 'Fall of at least', kind: 'share', inWords: 'a break falls by' },
      { key: 'breakDropWithinS', label: 'Within', kind: 'seconds', inWords: 'a break falls within' },
      { key: 'postBreakS', label: 'Looked at after it', kind: 'seconds', inWords: 'looked at after the break' },
    ],
  },
  {
    title: 'Device and press',
    thresholds: [
      { key: 'capacityN', label: 'Rated load', kind: 'force', inWords: 'rated load', mayBeUnknown: true },
      { key: 'settlingTimeS', label: 'Settling time', kind: 'seconds', inWords: 'settling time', mayBeZero: true },
      { key: 'pressSpeedMmPerS', label: 'Press speed', kind: 'speed', inWords: 'press speed', mayBeUnknown: true },
    ],
  },
  {
    title: 'Where the load has ended: low for a time',
    thresholds: [
      { key: 'endShare', label: 'Below, of the highest', kind: 'share', inWords: 'ended below' },
      { key: 'endHoldS', label: 'For', kind: 'seconds', inWords: 'ended after' },
    ],
  },
  {
    title: 'Codes between which the converter can read',
    thresholds: [
      { key: 'lowestCode', label: 'Lowest code', kind: 'code', inWords: 'lowest code', mayBeUnknown: true },
      { key: 'highestCode', label: 'Highest code', kind: 'code', inWords: 'highest code', mayBeUnknown: true },
    ],
  },
]

const thresholds = thresholdGroups.flatMap((group) => group.thresholds)

/** Nothing changed: every threshold as it was at capture. */
export const noThresholds = Object.fromEntries(thresholds.map(({ key }) => [key, ''])) as ThresholdTexts

/** The unit that a threshold is typed in, and by what its stored value is multiplied to be shown. */
export function thresholdUnit(kind: Kind, { force, length }: Quantities): { unit: string; factor: number } {
  switch (kind) {
    case 'force':
      return force
    case 'share':
      return { unit: '%', factor: 100 }
    case 'seconds':
      return { unit: 's', factor: 1 }
    case 'multiple':
      return { unit: '× SD', factor: 1 }
    case 'speed':
      return { unit: `${length.unit}/min`, factor: 60 * length.factor }
    case 'code':
      return { unit: '', factor: 1 }
  }
}

/** What settings say for a threshold; undefined: they do not name it. null: unknown. */
function valueIn(settings: DetectionSettings | DetectionChange, key: ThresholdKey): number | null | undefined {
  if (key !== 'lowestCode' && key !== 'highestCode') return settings[key]
  const { endCodes } = settings
  return endCodes ? endCodes[key === 'lowestCode' ? 0 : 1] : endCodes
}

function writeThreshold(value: number | null, kind: Kind, quantities: Quantities): string {
  if (value === null) return 'unknown'
  const { unit, factor } = thresholdUnit(kind, quantities)
  const shown = value * factor
  const decimals = kind === 'code' || Math.abs(shown) >= 1000 ? 0 : Math.abs(shown) >= 10 ? 2 : 4
  return `${withoutEndingZeros(writeFixed(shown, decimals))}${unit === '' ? '' : `\u00a0${unit}`}`
}

/** What settings say for a threshold, with its unit. */
export function settingWords(
  settings: DetectionSettings,
  { key, kind }: Pick<Threshold, 'key' | 'kind'>,
  quantities: Quantities,
): string {
  return writeThreshold(valueIn(settings, key) ?? null, kind, quantities)
}

/** Each threshold that differs, in words; none: all as at capture. */
export function changedWords(change: DetectionChange, quantities: Quantities): string[] {
  return thresholds.flatMap(({ key, kind, inWords }) => {
    const value = valueIn(change, key)
    return value === undefined ? [] : [`${inWords} ${writeThreshold(value, kind, quantities)}`]
  })
}

/** Thresholds that differ, as typed; or one clear sentence for each field that cannot be. */
export function readThresholds(
  texts: ThresholdTexts,
  quantities: Quantities,
): { settings: DetectionChange; errors: null } | { settings: null; errors: ThresholdErrors } {
  const errors: ThresholdErrors = {}
  const read = new Map<ThresholdKey, number | null>()
  for (const threshold of thresholds) {
    const { key, kind } = threshold
    const text = texts[key].trim()
    if (text === '') continue
    const { unit, factor } = thresholdUnit(kind, quantities)
    const typed = threshold.mayBeUnknown && text.toLowerCase() === 'unknown' ? null : readNumber(text)
    const problem = typed === null ? null : problemWith(typed, text, threshold, unit)
    if (problem !== null) errors[key] = problem
    else read.set(key, typed == null ? null : typed / factor)
  }
  const [lowest, highest] = [read.get('lowestCode'), read.get('highestCode')]
  if (!errors.lowestCode && !errors.highestCode) {
    if ((lowest == null) !== (highest == null) || (lowest === undefined) !== (highest === undefined))
      errors[lowest == null ? 'lowestCode' : 'highestCode'] = 'Write both codes, or neither.'
    else if (lowest != null && highest != null && lowest >= highest)
      errors.highestCode = 'It must be above the lowest code.'
  }
  if (Object.keys(errors).length > 0) return { settings: null, errors }
  const { lowestCode, highestCode, ...rest } = Object.fromEntries(read)
  const codes =
    lowestCode === undefined ? {} : { endCodes: lowestCode === null ? null : [lowestCode, highestCode ?? null] }
  return { settings: detectionChange.parse({ ...rest, ...codes }), errors: null }
}

function problemWith(
  typed: number | undefined,
  text: string,
  { kind, mayBeZero, mayBeUnknown }: Threshold,
  unit: string,
): string | null {
  if (typed === undefined)
    return `“${text}” is not a number. Write ${unit === '' ? 'a code' : `it in ${unit}`}${mayBeUnknown ? ', or “unknown”' : ''}.`
  if (kind === 'share' && (typed <= 0 || typed >= 100)) return 'Between 0 and 100 %.'
  if (kind === 'code' || typed > 0 || (typed === 0 && mayBeZero)) return null
  return mayBeZero ? 'It cannot be less than 0.' : `It must be more than 0 ${unit}.`
}
