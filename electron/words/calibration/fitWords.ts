import type { CalibrationAssessment } from '#contract/calibration/calibrationAssessment.ts'
import { writeNumber } from '../units/numbers.ts'

export const degreeWords = { 1: 'straight line', 2: 'parabola', 3: 'cubic' } as const

/** Whether a lack of fit speaks against a curve, with its figures. */
export function lackOfFitWords(test: CalibrationAssessment['lackOfFit']): string {
  if (test === null) return 'could not be tested: no step was repeated'
  const p = test.pValue < 0.001 ? 'p < 0.001' : `p = ${writeNumber(test.pValue, 3)}`
  return `F(${test.lackDegreesOfFreedom}, ${test.pureDegreesOfFreedom}) = ${writeNumber(test.f, 2)}, ${p}${test.pValue < 0.05 ? ', significant' : ', not significant'}`
}
