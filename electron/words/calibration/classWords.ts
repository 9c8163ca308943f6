import type { CalibrationStep } from '#contract/calibration/calibrationAssessment.ts'
import { limitingErrors } from '#domain/calibration/steps/accuracyClass.ts'
import type { Quantity } from '../units/quantities.ts'
import { loadText } from './weightWords.ts'

const errorNames = {
  q: 'error q',
  b: 'repeatability b',
  v: 'reversibility v',
  f0: 'zero f0',
  a: 'resolution a',
} as const

type Judged = Pick<CalibrationStep, 'forceN' | 'class' | 'q' | 'b' | 'v' | 'f0' | 'a'>

/**
 * Which step gives a calibration its class where others reach a better one, and by which of its errors: "because of the step at
 * 981 N: repeatability b"; empty where all steps have the same class.
 */
export function classReasonWords(steps: readonly Judged[], worst: CalibrationStep['class'], force: Quantity): string {
  const [first, ...more] = steps.filter((step) => step.class === worst)
  if (first === undefined || more.length + 1 === steps.length) return ''
  const which = more.length === 0 ? 'the step' : `${more.length + 1} steps, the first`
  const errors = limitingErrors(first).map((name) => errorNames[name])
  return `because of ${which} at ${loadText(first.forceN, force)}${errors.length === 0 ? '' : `: ${errors.join(', ')}`}`
}
