import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { LoadMemory } from '../loadMemory.ts'

/** Two samples of a slow device are further apart than breakDropWithinS; so many intervals are always looked back. */
const dropIntervals = 1.5
/** Most of a stepwise fall must have been fast steps. */
const fastFallShare = 0.6

/** Over how long a fall is looked for, s: breakDropWithinS, or 1.5 sample intervals where that is more. */
export function fallWindowS(settings: Pick<DetectionSettings, 'breakDropWithinS'>, intervalS: number): number {
  return Math.max(settings.breakDropWithinS, dropIntervals * intervalS)
}

/**
 * Whether the load has fallen as a bond does that lets go, at the newest sample; L load above zero, P highest L so far:
 *
 *   at once     highest of the last `windowS` − L >= breakDropShare P
 *   in steps    L <= (1 − breakDropShare) P, at least 0.6 of the way down in sudden steps (a progressive failure)
 *
 * Checked: tests/domain/signal/loading/fall/fallRule.spec.ts.
 */
export function hasFallen(
  { recent, suddenlyFallen }: Pick<LoadMemory, 'recent' | 'suddenlyFallen'>,
  newest: { force: number; load: number; peakLoad: number },
  { breakDropShare }: Pick<DetectionSettings, 'breakDropShare'>,
  windowS: number,
): boolean {
  const { force, load, peakLoad } = newest
  if (recent.windowHighest(windowS) - force >= breakDropShare * peakLoad) return true
  return load <= (1 - breakDropShare) * peakLoad && suddenlyFallen() >= fastFallShare * (peakLoad - load)
}
