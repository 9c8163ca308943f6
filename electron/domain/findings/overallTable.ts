import { type Condition, type Overall, overallStanding } from './overall.ts'

/** A joint type, gap and exposure, known by its key, with the weight that it has. */
export type WeighedCondition = { readonly key: string; readonly weight: number }
/** A strength that counts, MPa, with the adhesive and the condition that it is of. */
export type ConditionBlock = { readonly adhesive: string; readonly condition: string; readonly strengthMPa: number }

/** One adhesive's standing over all conditions, and beside the reference in each of them. */
export type OverallRow = {
  readonly adhesive: string
  readonly overall: Overall
  /** In the order of the conditions; a ratio of null: the adhesive or the reference has no block there. */
  readonly conditions: readonly Pick<Overall, 'ratio' | 'low' | 'high'>[]
}

/**
 * Every adhesive beside the reference, over weighed conditions, strongest first; those without a ratio come last, the reference is
 * not among them. Checked: tests/domain/findings/overallTable.spec.ts; the standing itself in overall.spec.ts against R.
 */
export function overallTable(
  blocks: readonly ConditionBlock[],
  conditions: readonly WeighedCondition[],
  reference: string,
  confidence: number,
): OverallRow[] {
  const strengths = new Map<string, number[]>()
  const at = (adhesive: string, condition: string) => JSON.stringify([adhesive, condition])
  for (const { adhesive, condition, strengthMPa } of blocks) {
    const key = at(adhesive, condition)
    const some = strengths.get(key)
    if (some === undefined) strengths.set(key, [strengthMPa])
    else some.push(strengthMPa)
  }
  const of = (adhesive: string, condition: string) => strengths.get(at(adhesive, condition)) ?? []
  const others = new Set(blocks.map(({ adhesive }) => adhesive).filter((adhesive) => adhesive !== reference))
  return [...others]
    .map((adhesive) => {
      const all = conditions.map(
        ({ key, weight }): Condition => ({
          ...{ name: key, weight, strengths: of(adhesive, key), reference: of(reference, key) },
        }),
      )
      return {
        adhesive,
        overall: overallStanding(all, confidence),
        conditions: all.map((one) => overallStanding([{ ...one, weight: 1 }], confidence)),
      }
    })
    .sort((one, other) => (other.overall.ratio ?? -1) - (one.overall.ratio ?? -1))
}
