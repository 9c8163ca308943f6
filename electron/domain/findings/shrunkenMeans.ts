import { tCritical } from '../numbers/distributions/studentT.ts'

/** A mean of a group and the variance of that mean. */
export type NoisyMean = { readonly mean: number; readonly variance: number }

/** A mean drawn towards the common one, in the unit of the means. */
export type ShrunkenMean = {
  readonly mean: number
  readonly low: number
  readonly high: number
  readonly shrinkage: number
}

/** Fewer groups say nothing of a spread between groups. */
export const leastGroupsToShrink = 4

/** Common mean and variance between groups A, with the sum of weighted squares equal to k − 1; A = 0 where they differ by less. */
function spreadBetween(groups: readonly NoisyMean[]): { between: number; common: number } {
  const k = groups.length
  const first = groups[0]!.mean
  const commonAt = (between: number) => {
    let weights = 0
    let sum = 0
    for (const { mean, variance } of groups) {
      weights += 1 / (variance + between)
      sum += (mean - first) / (variance + between)
    }
    return first + sum / weights
  }
  const excess = (between: number) => {
    const common = commonAt(between)
    return groups.reduce((sum, { mean, variance }) => sum + (mean - common) ** 2 / (variance + between), 0) - (k - 1)
  }
  if (excess(0) <= 0) return { between: 0, common: commonAt(0) }
  let low = 0
  let high = Math.max(...groups.map(({ variance }) => variance))
  while (excess(high) > 0) {
    low = high
    high *= 2
  }
  for (let round = 0; round < 200 && high - low > 1e-15 * high; round++) {
    const middle = (low + high) / 2
    if (excess(middle) > 0) low = middle
    else high = middle
  }
  const between = (low + high) / 2
  return { between, common: commonAt(between) }
}

/**
 * Means of many groups, each drawn towards their common mean as far as its own noise asks for: empirical Bayes after Morris. The
 * spread between groups is that at which the weighted squares equal k − 1.
 *
 *   Bᵢ = (k − 3)/(k − 1) · Vᵢ/(Vᵢ + A)      mᵢ = x̄ᵢ − Bᵢ (x̄ᵢ − μ)
 *   sᵢ² = Vᵢ (1 − Bᵢ (k − 1)/k) + 2/(k − 3) Bᵢ² (V̄ + A)/(Vᵢ + A) (x̄ᵢ − μ)²      interval mᵢ ± t(ν) sᵢ
 *
 * `df`: degrees of freedom of the variances; Infinity where they are known. With equal variances Bᵢ is that of James and Stein.
 * Throws RangeError for fewer than four groups or a variance that is not positive.
 * Source: Morris, Journal of the American Statistical Association 78 (1983) 47 (from memory).
 * Checked: tests/domain/findings/shrunkenMeans.spec.ts against Efron and Morris (1975).
 */
export function shrunkenMeans(
  groups: readonly NoisyMean[],
  confidence: number,
  df: number,
): { between: number; means: ShrunkenMean[] } {
  const k = groups.length
  if (k < leastGroupsToShrink || !groups.every(({ variance }) => variance > 0))
    throw new RangeError('shrunkenMeans requires four groups with a spread')
  const { between, common } = spreadBetween(groups)
  const t = tCritical(confidence, df)
  const usual = groups.reduce((sum, { variance }) => sum + variance, 0) / k
  const means = groups.map(({ mean, variance }) => {
    const shrinkage = (((k - 3) / (k - 1)) * variance) / (variance + between)
    const distance = mean - common
    const uncertain = ((2 / (k - 3)) * shrinkage ** 2 * (usual + between)) / (variance + between)
    const half = t * Math.sqrt(variance * (1 - (shrinkage * (k - 1)) / k) + uncertain * distance ** 2)
    const shrunken = mean - shrinkage * distance
    return { mean: shrunken, low: shrunken - half, high: shrunken + half, shrinkage }
  })
  return { between, means }
}
