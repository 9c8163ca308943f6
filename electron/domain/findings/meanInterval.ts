import { tCritical } from '../numbers/distributions/studentT.ts'
import { type Moments, varianceOf } from '../numbers/moments.ts'
import { onceForEach } from '../numbers/onceForEach.ts'

/** A mean with its interval, in the unit of the values; null where the blocks are too few. */
export type MeanInterval = { readonly mean: number | null; readonly low: number | null; readonly high: number | null }

/**
 * Mean with Student's interval; null: no value, and without an interval for a single one.
 *
 *   x̄ ± t(ν = n − 1) s/√n
 *
 * Source: NIST/SEMATECH e-Handbook 1.3.5.2. Checked: tests/domain/findings/meanInterval.spec.ts against its example.
 */
export function meanInterval(moments: Moments | null, confidence: number): MeanInterval {
  if (moments === null) return { mean: null, low: null, high: null }
  const { mean, n } = moments
  const variance = varianceOf(moments)
  if (variance === null) return { mean, low: null, high: null }
  const half = quantileOf(confidence, n - 1) * Math.sqrt(variance / n)
  return { mean, low: mean - half, high: mean + half }
}

const quantileOf = onceForEach(tCritical)
