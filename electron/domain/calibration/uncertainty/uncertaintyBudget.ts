import type { UncertaintyBudget, UncertaintyModel } from '#contract/calibration/uncertainty.ts'
import { uncertaintyAt } from './uncertaintyAt.ts'

/** Places between the steps at which the worst is looked for, evenly spaced in ratio. */
const placesBetween = 60

/**
 * Budget at every step of a calibration, and the largest expanded uncertainty (k = 2, percent) over its range.
 *
 * Steps outside the model's range are left out. The worst is looked for at the steps and at 60 places between.
 * Source: JCGM 100:2008 (from memory). Checked: tests/domain/calibration/uncertainty/uncertaintyBudget.spec.ts.
 */
export function uncertaintyBudget(model: UncertaintyModel, stepForcesN: readonly number[]): UncertaintyBudget {
  const [low, high] = model.forceRangeN
  const steps = stepForcesN
    .filter((forceN) => forceN >= low && forceN <= high)
    .map((forceN) => uncertaintyAt(model, forceN))
  const between = Array.from({ length: placesBetween - 1 }, (_, place) =>
    uncertaintyAt(model, Math.min(high, low * (high / low) ** ((place + 1) / placesBetween))),
  )
  const everywhere = [...steps, uncertaintyAt(model, low), ...between, uncertaintyAt(model, high)]
  const worst = everywhere.reduce((most, at) => (at.expandedPercent > most.expandedPercent ? at : most))
  return { model, steps, worstPercent: worst.expandedPercent, worstAtN: worst.forceN }
}
