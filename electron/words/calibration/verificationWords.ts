import type { Verification } from '#contract/calibration/verification.ts'
import { writeNumber } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'
import { rangeText } from './rangeWords.ts'

/** That a force lies above all that was checked, and by how many times, in a few words: "above verified range (8.6 ×)". */
export function highestWeightWords(timesVerified: number): string {
  return `above verified range (${writeNumber(timesVerified, 1)} ×)`
}

/** What the calibration says of this one force, in one sentence. */
export function verificationWords(verification: Verification, force: Quantity): string {
  const { verifiedRangeN, timesVerified, expandedUncertaintyN, expandedUncertaintyPercent } = verification
  if (verifiedRangeN === null)
    return 'The calibration has no verified range, so the accuracy of this force is not known.'
  if (timesVerified !== null && timesVerified > 1)
    return `${writeNumber(timesVerified, 2)} times the highest force of the calibration (${force.text(verifiedRangeN[1])}). Nothing was checked above that: the force is extrapolated.`
  if (expandedUncertaintyN === null)
    return `Outside the verified range of ${rangeText(verifiedRangeN, force)}: its accuracy was not checked.`
  return `Accurate within ±${force.text(expandedUncertaintyN)}${expandedUncertaintyPercent === null ? '' : ` (${writeNumber(expandedUncertaintyPercent, 2)} %)`}, k = 2.`
}
