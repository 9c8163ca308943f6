import { tCritical } from '../../numbers/distributions/studentT.ts'
import { momentsOf } from '../../numbers/moments.ts'

export type Retention = {
  readonly ratio: number | null
  readonly low: number | null
  readonly high: number | null
  /** false: the data allow any ratio, and there is no interval. */
  readonly bounded: boolean | null
}

/**
 * Mean strength at an age as a share of that at a first one, with Fieller's interval.
 *
 *   r = x̄₂/x̄₁; with g = t² s²/(n₁ x̄₁²): [r ± t s/x̄₁ √((1 − g)/n₂ + r²/n₁)]/(1 − g); unbounded where g ≥ 1
 *   s² pooled over the two ages, ν = n₁ + n₂ − 2
 *
 * All null where an age has no blocks or the first a mean of 0; no interval with two blocks together.
 * Source: Fieller, Journal of the Royal Statistical Society B 16 (1954) 175 (from memory).
 * Checked: tests/domain/findings/ageing/retention.spec.ts.
 */
export function retentionOf(first: ArrayLike<number>, later: ArrayLike<number>, confidence: number): Retention {
  if (first.length === 0 || later.length === 0) return { ratio: null, low: null, high: null, bounded: null }
  const one = momentsOf(first)
  const two = momentsOf(later)
  if (one.mean === 0) return { ratio: null, low: null, high: null, bounded: null }
  const ratio = two.mean / one.mean
  const df = one.n + two.n - 2
  if (df < 1) return { ratio, low: null, high: null, bounded: null }
  const variance = (one.squares + two.squares) / df
  const t = tCritical(confidence, df)
  const g = (t * t * variance) / (one.n * one.mean * one.mean)
  if (g >= 1) return { ratio, low: null, high: null, bounded: false }
  const half = ((t * Math.sqrt(variance)) / Math.abs(one.mean)) * Math.sqrt((1 - g) / two.n + (ratio * ratio) / one.n)
  return { ratio, low: (ratio - half) / (1 - g), high: (ratio + half) / (1 - g), bounded: true }
}
