import type { DetectionChange, DetectionSettings } from '#contract/breaks/detection.ts'
import { withoutEndingZeros, writeFixed } from '../units/numbers.ts'
import type { Quantities } from '../units/quantities.ts'

/** A threshold that an evaluation may change. The converter's end codes are two numbers and so two thresholds. */
export type ThresholdKey = Exclude<keyof DetectionChange, 'endCodes'> | 'lowestCode' | 'highestCode'

type Kind = 'force' | 'share' | 'seconds' | 'multiple' | 'speed' | 'code'
export type Threshold = {
  key: ThresholdKey
  label: string
  kind: Kind
  /** Its name within a sentence. */
  inWords: string
}

/** Every threshold by what it is about, in the order in which they are shown. */
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
      { key: 'capacityN', label: 'Rated load', kind: 'force', inWords: 'rated load' },
      { key: 'settlingTimeS', label: 'Settling time', kind: 'seconds', inWords: 'settling time' },
      { key: 'pressSpeedMmPerS', label: 'Press speed', kind: 'speed', inWords: 'press speed' },
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
      { key: 'lowestCode', label: 'Lowest code', kind: 'code', inWords: 'lowest code' },
      { key: 'highestCode', label: 'Highest code', kind: 'code', inWords: 'highest code' },
    ],
  },
]

const thresholds = thresholdGroups.flatMap((group) => group.thresholds)

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
