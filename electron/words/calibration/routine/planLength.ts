import type { CalibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import { countOf } from '../../units/counts.ts'

/** A person needs about so long to hang or take off a stack, s: common practice, no source. */
const handlingS = 12

/** How many readings a plan takes, and about how long that lasts. */
export function planLength(
  plan: Pick<CalibrationPlan, 'steps' | 'runs' | 'decreasing' | 'preloads' | 'averageS' | 'creepHoldS'>,
): string {
  const down = plan.decreasing ? plan.steps.length - 1 : 0
  const readings = plan.runs * (plan.steps.length + down + 2)
  const seconds = readings * (handlingS + plan.averageS) + plan.preloads * 2 * handlingS + (plan.creepHoldS ?? 0)
  return `${countOf(readings, 'reading')}, about ${countOf(Math.max(Math.round(seconds / 60), 1), 'minute')}.`
}
