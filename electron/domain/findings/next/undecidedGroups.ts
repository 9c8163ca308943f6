import type { UndecidedGroup } from '#contract/findings/next.ts'
import { tCritical } from '../../numbers/distributions/studentT.ts'
import { blocksForPower } from '../../programme/sampleSize.ts'
import { pooledVariation } from '../../programme/study/pooledVariation.ts'
import { equivalentPairs } from '../compare/equivalence.ts'
import { type GroupValues, welchDifference, withMoments } from '../compare/groupValues.ts'

/** The difference that matters, in percent of the reference, and how surely it is to be found. */
export type Wanted = { marginPercent: number; confidence: number; power: number }

/**
 * Groups of one age that the data neither tell from the reference (Welch) nor show to be alike within the margin (two one-sided
 * tests), and whose blocks, or those of the reference, are fewer than a comparison of two groups needs to find a difference of the margin
 * at the spread of the two together. A group of one block says nothing of its spread and takes that of the reference.
 *
 * Source: as domain/programme/sampleSize.ts. Checked: tests/domain/findings/next/undecidedGroups.spec.ts against R power.t.test.
 */
export function undecidedGroups(
  reference: GroupValues,
  others: readonly GroupValues[],
  ageMonths: number | null,
  { marginPercent, confidence, power }: Wanted,
): UndecidedGroup[] {
  return others.flatMap((other) => {
    if (other.values.length === 0 || reference.values.length < 2) return []
    if (isTold(other, reference, confidence)) return []
    const [alike] = equivalentPairs([other, reference], marginPercent, confidence)
    if (alike?.equivalent === true) return []
    const spread = pooledVariation([[...other.values], [...reference.values]])
    if (spread === null) return []
    const needed = blocksForPower(
      { comparison: 'pair', groups: 2, confidence },
      marginPercent / spread.cvPercent,
      power,
    )
    const [n, referenceN] = [other.values.length, reference.values.length]
    if (needed === null || Math.min(n, referenceN) >= Math.ceil(needed - 1e-9)) return []
    return [
      {
        ...{ group: other.group, reference: reference.group, ageMonths, n, referenceN, cvPercent: spread.cvPercent },
        needed: Math.ceil(needed - 1e-9),
      },
    ]
  })
}

/** Whether the interval of the difference of two means leaves 0 out. */
function isTold(one: GroupValues, other: GroupValues, confidence: number): boolean {
  const [a, b] = withMoments([one, other], 2)
  if (a === undefined || b === undefined) return false
  const { variance, df } = welchDifference(a, b)
  return variance > 0 && Math.abs(a.mean - b.mean) > tCritical(confidence, df) * Math.sqrt(variance)
}
