import type { OverallSettings, WeighedCondition } from '#contract/findings/keptFinding.ts'
import type { FindingsGroup } from '#contract/findings/procedures.ts'
import { conditionKey } from '#domain/findings/askedBlocks.ts'
import { tellingNames } from '#words/findings/groupNames.ts'

/** A condition that has blocks, or that was chosen when it had some, with its weight; 0: it is left out. */
export type NamedCondition = WeighedCondition & { key: string; name: string }

/** All conditions that groups are in, as chosen: with weight 1 each where nothing is. `lengthText` writes a length in mm. */
export function namedConditions(
  groups: readonly FindingsGroup[],
  { conditions }: Pick<OverallSettings, 'conditions'>,
  lengthText: (mm: number) => string,
): NamedCondition[] {
  const chosen = new Map((conditions ?? []).map((one) => [conditionKey(one), one]))
  const all = new Map<string, WeighedCondition>()
  for (const group of groups) {
    const { jointType, bondLineGapMm, exposure } = group
    const key = conditionKey(group)
    const weight = conditions === null ? 1 : (chosen.get(key)?.weight ?? 0)
    all.set(key, { jointType, bondLineGapMm, exposure, weight })
  }
  for (const [key, one] of chosen) all.set(key, one)
  const names = tellingNames(
    [...all].map(([key, one]) => ({ ...one, key, adhesive: '' })),
    lengthText,
  )
  return [...all].map(([key, one]) => ({ ...one, key, name: names.get(key) || one.exposure || 'all blocks' }))
}

/** Adhesives of groups, in order of name. */
export function adhesivesOf(groups: readonly FindingsGroup[]): string[] {
  return [...new Set(groups.map(({ adhesive }) => adhesive))].filter((one) => one !== '').sort()
}
