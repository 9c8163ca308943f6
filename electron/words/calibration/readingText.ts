import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { writeFixed } from '../units/numbers.ts'

/** A reading of the device in its own unit, with steady decimals; `more` decimals for means and spreads. */
export function readingText(value: number, unit: ReadingUnit, more = 0): string {
  return writeFixed(value, (unit === 'counts' ? 0 : unit === 'kN' ? 4 : 2) + more)
}
