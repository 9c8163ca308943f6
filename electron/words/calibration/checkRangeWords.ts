import type { Quantity } from '../units/quantities.ts'
import { rangeText } from './rangeWords.ts'
import { loadText } from './weightWords.ts'

/** That a check weight makes a force outside the verified range, and what its check is then worth; null: it lies inside. */
export function checkRangeWords(
  expectedN: number,
  verifiedRangeN: readonly [number, number] | null,
  force: Quantity,
): string | null {
  if (verifiedRangeN === null)
    return 'The calibration has no verified range: the check shows whether the bench has changed, not whether its forces are right.'
  const [low, high] = verifiedRangeN
  if (expectedN >= low && expectedN <= high) return null
  const side = expectedN < low ? 'below' : 'above'
  return `This weight makes ${loadText(expectedN, force)}, ${side} the verified range of ${rangeText(verifiedRangeN, force)}. Its check shows whether the bench has changed, and nothing of the forces in the range.`
}
