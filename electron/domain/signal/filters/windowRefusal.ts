import type { Stretch } from '../stream/stretches.ts'
import { type Refusal, rounded, roundedDown, roundedUp } from './refusal.ts'

/** A window holds at least so many intervals, hence three samples ... */
const leastIntervals = 2
/** ... and is not longer than the curve; this much past either limit is let pass. */
const room = 0.01

/**
 * Why a window of time does not fit the samples of a curve; null where it does: it holds three samples, and there is a stretch
 * between gaps that is as long as it. Over a longer window a slope is one straight line, which is not a curve to look at.
 *
 * Checked: tests/domain/signal/filters/windowRefusal.spec.ts.
 */
export function windowRefusal(windowS: number, stretches: readonly Stretch[]): Refusal | null {
  let longestStepS = 0
  let longestS = 0
  for (const { from, to, intervalS } of stretches)
    if (to - from > 1) {
      longestStepS = Math.max(longestStepS, intervalS)
      longestS = Math.max(longestS, (to - from - 1) * intervalS)
    }
  if (longestS === 0) return null
  const leastS = leastIntervals * longestStepS
  if (windowS < (1 - room) * leastS)
    return {
      because: `A window of ${rounded(windowS)} s is too short for samples that come every ${rounded(longestStepS)} s.`,
      cure: `Take at least ${roundedUp(leastS)} s, which holds three samples.`,
    }
  const mostS = Math.max(longestS, leastS)
  if (windowS > (1 + room) * mostS)
    return {
      because: `A window of ${rounded(windowS)} s is longer than this curve, whose longest stretch without a gap lasts ${rounded(mostS)} s: nothing of its course would be left.`,
      cure: `Take at most ${roundedDown(mostS)} s; a tenth of that shows more.`,
    }
  return null
}
