import type { AccuracyClass } from '#contract/calibration/calibrationAssessment.ts'
import type { Quantity } from '../units/quantities.ts'

/** A class as it stands behind a number. */
export function classWords(accuracy: AccuracyClass): string {
  return accuracy === 'none' ? 'no class' : `class ${accuracy}`
}

/** A range of forces; null where there is none. */
export function rangeText(rangeN: readonly [number, number] | null, force: Quantity): string {
  if (rangeN === null) return 'none'
  return `${force.number(rangeN[0])} to ${force.text(rangeN[1])}`
}
