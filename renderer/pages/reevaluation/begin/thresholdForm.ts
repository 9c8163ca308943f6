import { type DetectionChange, detectionChange } from '#contract/breaks/detection.ts'
import { type Threshold, type ThresholdKey, thresholdGroups, thresholdUnit } from '#words/breaks/thresholdWords.ts'
import { inUnit } from '#words/units/notANumber.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'
import type { UnitFields } from '../../../parts/forms/typedTexts.ts'

export type ThresholdTexts = Record<ThresholdKey, string>
export type ThresholdErrors = Partial<Record<ThresholdKey, string>>

const thresholds = thresholdGroups.flatMap((group) => group.thresholds)

/** Thresholds that may be written as "unknown". */
const mayBeUnknown: readonly ThresholdKey[] = ['capacityN', 'pressSpeedMmPerS', 'lowestCode', 'highestCode']

/** Whether a threshold may be written as "unknown". */
function isUnknownAllowed(key: ThresholdKey): boolean {
  return mayBeUnknown.includes(key)
}

/** Nothing changed: every threshold as it was at capture. */
export const noThresholds = Object.fromEntries(thresholds.map(({ key }) => [key, ''])) as ThresholdTexts

/** The fields whose unit follows the units of the program. */
export const thresholdUnits: UnitFields<ThresholdKey> = Object.fromEntries(
  thresholds.map(({ key, kind }) => [key, (quantities: Quantities) => thresholdUnit(kind, quantities)]),
)

/** Thresholds that differ, as they are read; or one clear sentence for each field that cannot be. */
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
    if (isUnknownAllowed(key) && text.toLowerCase() === 'unknown') {
      read.set(key, null)
      continue
    }
    const unit = thresholdUnit(kind, quantities)
    const wanted = `${unit.unit === '' ? 'a code' : `it ${inUnit(unit.unit)}`}${isUnknownAllowed(key) ? ', or “unknown”' : ''}`
    const typed = readQuantity(text, unit, wanted)
    const problem = 'error' in typed ? typed.error : problemWith(typed.stored ?? 0, threshold, unit.unit)
    if (problem !== null) errors[key] = problem
    else if ('stored' in typed) read.set(key, typed.stored)
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

function problemWith(stored: number, { key, kind }: Threshold, unit: string): string | null {
  if (kind === 'share' && (stored <= 0 || stored >= 1)) return 'Between 0 and 100 %.'
  // A device may answer at once
  const isZeroAllowed = key === 'settlingTimeS'
  if (kind === 'code' || stored > 0 || (stored === 0 && isZeroAllowed)) return null
  return isZeroAllowed ? 'It cannot be less than 0.' : `It must be more than 0 ${unit}.`
}
