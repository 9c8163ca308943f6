import type { Verification } from '#contract/calibration/verification.ts'
import { writeNumber } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'
import { rangeText } from './rangeWords.ts'

/** By how much a force lies above all that was checked, in a few words: "8.6 × the highest weight". */
export function highestWeightWords(timesVerified: number): string {
  return `${writeNumber(timesVerified, 1)} × the highest weight`
}

/** What the calibration says of this one force, in one sentence. */
export function verificationWords(verification: Verification, force: Quantity): string {
  const { verifiedRangeN, timesVerified, expandedUncertaintyN, expandedUncertaintyPercent } = verification
  if (verifiedRangeN === null)
    return 'The calibration has no verified range, so nothing is known of how true this force is.'
  if (timesVerified !== null && timesVerified > 1)
    return `${writeNumber(timesVerified, 2)} times the highest weight ever hung on this cell (${force.text(verifiedRangeN[1])}). Above it nothing was checked: the force is the curve drawn further.`
  if (expandedUncertaintyN === null)
    return `Outside the verified range of ${rangeText(verifiedRangeN, force)}: how true this force is was not checked.`
  return `True within ±${force.text(expandedUncertaintyN)}${expandedUncertaintyPercent === null ? '' : ` (${writeNumber(expandedUncertaintyPercent, 2)} %)`}, k = 2.`
}
