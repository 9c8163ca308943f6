import { resolutionMultiple } from '#domain/calibration/steps/verifiedRange.ts'
import { withoutEndingZeros, writeNumber } from '../units/numbers.ts'

/** What is said beside the field of the resolution; `suggested`: half the noise of the first zero in the unit of the reading, or null. */
export function resolutionWords(suggested: number | null): string {
  const what =
    suggested === null
      ? 'The smallest step that can be read.'
      : `Half the noise of the first zero reading is ${withoutEndingZeros(writeNumber(suggested, 3))}.`
  return `${what} The verified range starts at ${resolutionMultiple} times the resolution.`
}
