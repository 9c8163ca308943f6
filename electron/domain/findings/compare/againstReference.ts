import { dunnettQuantile, dunnettUpperTail } from '../../numbers/distributions/dunnett.ts'
import { type GroupValues, withinGroups, withMoments } from './groupValues.ts'

/** One group beside the reference, MPa; null where the data have none. */
export type AgainstReference = {
  readonly group: string
  readonly differenceMPa: number
  readonly lowMPa: number | null
  readonly highMPa: number | null
  readonly statistic: number | null
  /** For all groups together. */
  readonly p: number | null
}

/**
 * Every other group against one reference, by Dunnett: two-sided, one spread for all groups.
 *
 *   t = (x̄ − x̄₀)/√(s² (1/n + 1/n₀)),  s² pooled over all groups, ν = n − k
 *
 * Empty where the reference has no blocks, no other group has, or no group has two.
 * Source: Dunnett, Biometrics 20 (1964) 482. Checked: tests/domain/findings/compare/againstReference.spec.ts against Dunnett's
 * example of 1955 and R multcomp.
 */
export function againstReference(
  values: readonly GroupValues[],
  referenceName: string,
  confidence: number,
): AgainstReference[] {
  const groups = withMoments(values, 1)
  const reference = groups.find(({ group }) => group === referenceName)
  const others = groups.filter(({ group }) => group !== referenceName)
  const { df, variance } = withinGroups(groups)
  if (reference === undefined || others.length === 0 || df < 1) return []
  const design = { reference: reference.n, groups: others.map(({ n }) => n) }
  const critical = variance > 0 ? dunnettQuantile(1 - confidence, design, df) : null
  return others.map(({ group, n, mean }) => {
    const differenceMPa = mean - reference.mean
    if (critical === null) return { group, differenceMPa, lowMPa: null, highMPa: null, statistic: null, p: null }
    const se = Math.sqrt(variance * (1 / n + 1 / reference.n))
    return {
      group,
      differenceMPa,
      lowMPa: differenceMPa - critical * se,
      highMPa: differenceMPa + critical * se,
      statistic: differenceMPa / se,
      p: dunnettUpperTail(Math.abs(differenceMPa / se), design, df),
    }
  })
}
