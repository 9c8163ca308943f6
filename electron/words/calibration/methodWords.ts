import type { CalibrationAssessment } from '#contract/calibration/calibrationAssessment.ts'

/** How the curve was found, in a sentence. */
export function fitWords({
  result,
  fitOver,
  throughZero,
  method,
}: Pick<CalibrationAssessment, 'result' | 'fitOver' | 'throughZero' | 'method'>): string {
  const which = fitOver === 'up' ? 'readings taken going up' : 'readings, up and down'
  return `Least squares over ${result.readings} ${which}${throughZero ? ', through zero' : ''} (${method}).`
}
