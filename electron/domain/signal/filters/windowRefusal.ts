import type { Stretch } from '../stretches.ts'
import { type Refusal, rounded, roundedUp } from './refusal.ts'

/** A window holds at least so many intervals, hence three samples; 1 % less is let pass. */
const leastIntervals = 2

/**
 * Why a window of time is too short for the samples of a curve (fewer than three would be in it); null where it is not.
 *
 * Checked: tests/domain/signal/filters/windowRefusal.spec.ts.
 */
export function windowRefusal(windowS: number, stretches: readonly Stretch[]): Refusal | null {
  const longestS = stretches.reduce(
    (longest, { from, to, intervalS }) => (to - from > 1 ? Math.max(longest, intervalS) : longest),
    0,
  )
  if (windowS >= 0.99 * leastIntervals * longestS) return null
  return {
    because: `A window of ${rounded(windowS)} s is too short for samples that come every ${rounded(longestS)} s.`,
    cure: `Take at least ${roundedUp(leastIntervals * longestS)} s, which holds three samples.`,
  }
}
