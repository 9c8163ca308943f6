import { tCritical } from '../numbers/distributions/studentT.ts'
import { momentsOf } from '../numbers/moments.ts'

/** One condition (a joint type, gap and exposure) with its weight, and the strengths of adhesive and reference in it, MPa. */
export type Condition = {
  readonly name: string
  readonly weight: number
  readonly strengths: readonly number[]
  readonly reference: readonly number[]
}

/** Standing of one adhesive beside the reference, as a ratio: 1 is as strong. */
export type Overall = {
  readonly ratio: number | null
  readonly low: number | null
  readonly high: number | null
  readonly conditions: readonly { name: string; weight: number; ratio: number; standardError: number | null }[]
  /** Conditions in which one of the two has no block; they carry no weight. */
  readonly missing: readonly string[]
}

type Part = { name: string; weight: number; ratio: number; variances: { variance: number; df: number }[] }

/** Ratio of two means and the two parts of its variance, each with its degrees of freedom. */
function partOf({ name, weight, strengths, reference }: Condition): Part {
  const [one, other] = [momentsOf(strengths), momentsOf(reference)]
  const ratio = one.mean / other.mean
  const variances = [
    { of: one, factor: 1 / other.mean ** 2 },
    { of: other, factor: (ratio / other.mean) ** 2 },
  ].map(({ of: { n, squares }, factor }) => ({
    variance: n < 2 ? Number.NaN : (factor * squares) / (n - 1) / n,
    df: n - 1,
  }))
  return { name, weight, ratio, variances }
}

/**
 * Mean of the ratios to the reference over conditions, weighted, with an interval by the delta method; an average of strengths over
 * conditions would say more of the conditions than of the adhesive.
 *
 *   R = Σ wᵢ rᵢ/Σ wᵢ,  rᵢ = x̄ᵢ/ȳᵢ     var rᵢ = (s²ₓ/nₓ + rᵢ² s²ᵧ/nᵧ)/ȳᵢ²     ν after Welch and Satterthwaite over all the parts
 *
 * Without an interval where a mean rests on one block. Throws RangeError for a weight that is negative.
 * Source: JCGM 100:2008 5.1.2 and G.4.1. Checked: tests/domain/findings/overall.spec.ts against R (numericDeriv).
 */
export function overallStanding(conditions: readonly Condition[], confidence: number): Overall {
  if (conditions.some(({ weight }) => !(weight >= 0)))
    throw new RangeError('overallStanding requires weights of 0 or more')
  const isThere = ({ strengths, reference }: Condition) => strengths.length > 0 && reference.length > 0
  const parts = conditions.filter((one) => isThere(one) && one.weight > 0).map(partOf)
  const missing = conditions.filter((one) => !isThere(one)).map(({ name }) => name)
  const whole = parts.reduce((sum, { weight }) => sum + weight, 0)
  const shown = parts.map(({ name, weight, ratio, variances }) => {
    const variance = variances.reduce((sum, part) => sum + part.variance, 0)
    return { name, weight, ratio, standardError: Number.isNaN(variance) ? null : Math.sqrt(variance) }
  })
  if (whole === 0) return { ratio: null, low: null, high: null, conditions: shown, missing }
  const ratio = parts.reduce((sum, part) => sum + (part.weight / whole) * part.ratio, 0)
  const weighted = parts.flatMap(({ weight, variances }) =>
    variances.map(({ variance, df }) => ({ variance: (weight / whole) ** 2 * variance, df })),
  )
  const variance = weighted.reduce((sum, part) => sum + part.variance, 0)
  if (!(variance > 0)) return { ratio, low: null, high: null, conditions: shown, missing }
  const df = variance ** 2 / weighted.reduce((sum, part) => sum + part.variance ** 2 / part.df, 0)
  const half = tCritical(confidence, df) * Math.sqrt(variance)
  return { ratio, low: ratio - half, high: ratio + half, conditions: shown, missing }
}
