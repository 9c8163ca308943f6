import { momentsOf, varianceOf } from '../../numbers/moments.ts'

/** Spread within groups in percent of their means, and what it rests on. */
export type PooledVariation = { cvPercent: number; groups: number; blocks: number }

/**
 * Coefficient of variation within groups, pooled over those of two blocks or more; null where there is none.
 *
 *   CV = √( Σ (nᵢ − 1) CVᵢ² / Σ (nᵢ − 1) )
 *
 * Each weighs by its degrees of freedom, as variances are pooled. Values in any one unit, all above 0.
 * Source: pooled variance, NIST/SEMATECH e-Handbook 7.3.1, of values in units of their group's mean.
 * Checked: tests/domain/programme/study/pooledVariation.spec.ts against R.
 */
export function pooledVariation(groups: readonly (readonly number[])[]): PooledVariation | null {
  let squares = 0
  let df = 0
  let used = 0
  let blocks = 0
  for (const group of groups) {
    if (group.length < 2) continue
    const moments = momentsOf(group)
    squares += ((group.length - 1) * varianceOf(moments)!) / moments.mean ** 2
    df += group.length - 1
    used += 1
    blocks += group.length
  }
  return used === 0 || squares === 0 ? null : { cvPercent: 100 * Math.sqrt(squares / df), groups: used, blocks }
}
