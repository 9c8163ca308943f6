import type { LiveFrame, SignalState } from '#contract/bench/bench.ts'
import type { DetectionSettings } from '#contract/breaks/detection.ts'

/** After a break the bench counts as empty when the force is below so many start thresholds. */
const emptyBelowThresholds = 3
/** Where no start threshold is known, so many noise SDs stand for it. */
const emptyBelowNoises = 15

/** Whether the broken specimen was let go: the force of the newest sample, N after tare, is near zero. */
export function isEmpty({ latest }: Pick<LiveFrame, 'latest'>, { startThreshold }: SignalState): boolean {
  return latest !== null && (startThreshold === null || Math.abs(latest) < emptyBelowThresholds * startThreshold)
}

/** As isEmpty, for a bench that looks for no break and so has no threshold of its own. */
export function isFree(
  { latest }: Pick<LiveFrame, 'latest'>,
  { noise }: SignalState,
  { capacityN, startCapacityShare }: DetectionSettings,
): boolean {
  const least = Math.max((capacityN ?? 0) * startCapacityShare * emptyBelowThresholds, (noise ?? 0) * emptyBelowNoises)
  return latest !== null && Math.abs(latest) <= least
}
