import { bracketedRoot } from '../numbers/bracketedRoot.ts'
import { fQuantile } from '../numbers/distributions/fisherF.ts'
import { noncentralFUpperTail } from '../numbers/distributions/noncentralF.ts'
import { powerOfT } from '../numbers/distributions/shiftToFind.ts'

/** What is compared: two groups by a t test, or any number of them by one F test. */
export type PlannedTest = { comparison: 'pair' | 'any'; groups: number; confidence: number }

/** Fewer blocks than this have no spread, and more than this nobody makes. */
const leastBlocks = 2
export const mostBlocks = 1e6
/** A difference of so many SDs is seen by anybody; the search ends there. */
const largestDifference = 1e6

/**
 * Chance to find a difference, with n blocks a group (a real number, at least 2) and the difference in SDs of single blocks.
 *
 *   pair: powerOfT, ν = 2n − 2, δ = d √(n/2)
 *   any:  P(F > f),    F noncentral F, ν₁ = k − 1, ν₂ = k (n − 1), λ = n d²/2: two groups d apart, all others midway
 *
 * Throws RangeError outside these bounds.
 * Source: Cohen, Statistical Power Analysis for the Behavioral Sciences, 1988, chapters 2 and 8 (pattern of minimum variability),
 * from memory. Checked: tests/domain/programme/sampleSize.spec.ts against R power.t.test and power.anova.test.
 */
export function powerToFind(test: PlannedTest, n: number, difference: number): number {
  if (!(n >= leastBlocks && difference >= 0))
    throw new RangeError('A power requires two blocks a group and a difference')
  if (test.comparison === 'pair') return powerOfT(difference * Math.sqrt(n / 2), 2 * n - 2, test.confidence)
  const df1 = test.groups - 1
  const df2 = test.groups * (n - 1)
  return noncentralFUpperTail(fQuantile(test.confidence, df1, df2), df1, df2, (n * difference * difference) / 2)
}

/**
 * Blocks a group, unrounded and at least 2, with which a difference in SDs is found with that power; null where more than
 * `mostBlocks` would be needed. Throws RangeError as powerToFind.
 * Source: inverse of powerToFind. Checked: tests/domain/programme/sampleSize.spec.ts against R power.t.test, power.anova.test.
 */
export function blocksForPower(test: PlannedTest, difference: number, power: number): number | null {
  const short = (n: number) => powerToFind(test, n, difference) - power
  if (short(leastBlocks) >= 0) return leastBlocks
  let least = leastBlocks
  let most = 2 * leastBlocks
  while (short(most) < 0) {
    if (most === mostBlocks) return null
    least = most
    most = Math.min(2 * most, mostBlocks)
  }
  return bracketedRoot(short, least, most, 1e-10)
}

/**
 * Smallest difference, in SDs, that n blocks a group find with that power; null where even an absurd one is not found (a power
 * no larger than the chance of a false alarm is had without any difference: 0). Throws RangeError as powerToFind.
 * Source: inverse of powerToFind. Checked: tests/domain/programme/sampleSize.spec.ts against R power.t.test, power.anova.test.
 */
export function detectableDifference(test: PlannedTest, n: number, power: number): number | null {
  if (power <= 1 - test.confidence) return 0
  const short = (difference: number) => powerToFind(test, n, difference) - power
  let most = 1
  while (short(most) < 0) {
    most *= 2
    if (most > largestDifference) return null
  }
  return bracketedRoot(short, 0, most, 1e-13)
}
