import { bracketedRoot } from '../bracketedRoot.ts'
import { normalFromTable } from './normalTable.ts'
import { meanOverSpread } from './pooledSpread.ts'

/** How the blocks are shared out: of the reference, and of each group compared with it. */
export type DunnettDesign = { readonly reference: number; readonly groups: readonly number[] }

/** Steps of the trapezoid rule over z, as wide as a smooth integrand allows, and so many to the width of the steepest factor. */
const widestStep = 3 / 16
const stepsToWidth = 4
const reach = 8.5

/**
 * Probability that the largest of the absolute t values of all groups against one reference is above t, with ν degrees of
 * freedom of the pooled spread.
 *
 *   1 − E_S ∫ φ(z) Π_i [Φ((λᵢ z + t S)/√(1−λᵢ²)) − Φ((λᵢ z − t S)/√(1−λᵢ²))] dz,  λᵢ = √(nᵢ/(nᵢ + n₀))
 *
 * The correlations of the t values are λᵢ λⱼ, so that one more integral does for any number of groups. ν may be Infinity.
 * Throws RangeError for no groups, a size that is not positive, or ν not positive.
 * Source: Dunnett, Biometrics 20 (1964) 482. Checked: tests/domain/numbers/distributions/dunnett.spec.ts.
 */
export function dunnettUpperTail(t: number, { reference, groups }: DunnettDesign, df: number): number {
  if (groups.length === 0 || ![reference, ...groups].every((n) => n > 0))
    throw new RangeError('A comparison with a reference requires groups with blocks')
  if (!(t > 0)) return 1
  const counts = new Map<number, number>()
  for (const n of groups) counts.set(n, (counts.get(n) ?? 0) + 1)
  const parts = [...counts].map(([n, count]) => {
    const lambda = Math.sqrt(n / (n + reference))
    return { lambda, root: Math.sqrt(reference / (n + reference)), count }
  })
  // A factor rises within √(1−λ²)/λ: steeply where the reference has few blocks and a group has many.
  const step = parts.reduce((least, { lambda, root }) => Math.min(least, root / (stepsToWidth * lambda)), widestStep)
  const within = (width: number) => {
    let sum = 0
    for (let z = step; z <= reach; z += step) sum += Math.exp(-0.5 * z * z) * product(parts, z, width)
    return (step / Math.sqrt(2 * Math.PI)) * (2 * sum + product(parts, 0, width))
  }
  const steepest = 2 + t * Math.max(...parts.map(({ root }) => 1 / root))
  return Math.max(1 - meanOverSpread(df, Math.min(steepest, 12), (s) => within(t * s)), 0)
}

function product(parts: readonly { lambda: number; root: number; count: number }[], z: number, width: number): number {
  let all = 1
  for (const { lambda, root, count } of parts) {
    const share = normalFromTable((lambda * z + width) / root) - normalFromTable((lambda * z - width) / root)
    all *= count === 1 ? share : share ** count
  }
  return all
}

/**
 * Value that the largest absolute t value against the reference exceeds with probability `upperTail`, between 0 and 1.
 * Throws RangeError as dunnettUpperTail. Source: its inverse. Checked: tests/domain/numbers/distributions/dunnett.spec.ts.
 */
export function dunnettQuantile(upperTail: number, design: DunnettDesign, df: number): number {
  if (!(upperTail > 0 && upperTail < 1)) throw new RangeError('A quantile requires a probability between 0 and 1')
  const excess = (t: number) => 1 - dunnettUpperTail(t, design, df) / upperTail
  let high = 4
  while (excess(high) < 0) high *= 2
  return bracketedRoot(excess, high === 4 ? 0 : high / 2, high, 1e-12)
}
