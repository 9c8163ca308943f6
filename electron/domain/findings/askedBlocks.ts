import type { FindingsSettings } from '#contract/findings/keptFinding.ts'
import type { FindingsBlock, FindingsGroup } from '#contract/findings/procedures.ts'

type Condition = Pick<FindingsGroup, 'jointType' | 'bondLineGapMm' | 'exposure'>

/** What a condition is known by: a joint type, a gap and an exposure. */
export function conditionKey({ jointType, bondLineGapMm, exposure }: Condition): string {
  return JSON.stringify([jointType, bondLineGapMm, exposure])
}

/** Of which blocks a question is asked, as far as single traits say it; null: of all. */
export function filterOf({ asked, adhesive, exposure, overall }: FindingsSettings) {
  if (asked === 'overall') return { adhesives: overallAdhesives(overall), exposures: null }
  const some = (value: string) => (value === '' ? null : [value])
  return { adhesives: some(adhesive), exposures: some(exposure) }
}

/** The adhesives whose standing is asked for, with the one that they are held against; null: all. */
function overallAdhesives({ adhesives, reference }: FindingsSettings['overall']): string[] | null {
  return adhesives === null ? null : [...new Set([...adhesives, ...(reference === '' ? [] : [reference])])]
}

/** Ages of blocks, youngest first, as a list offers them; null: of unknown age. */
export function agesOf(blocks: readonly { ageMonths: number | null }[]): (number | null)[] {
  return [...new Set(blocks.map(({ ageMonths }) => ageMonths))].sort((one, other) => (one ?? -1) - (other ?? -1))
}

/** The age that is looked at: the chosen one, else the youngest at which two groups have blocks, else the youngest. */
export function ageToShow(
  blocks: readonly { group: string; ageMonths: number | null }[],
  chosen: string,
): number | null | undefined {
  const ages = agesOf(blocks)
  const named = ages.find((age) => String(age) === chosen)
  if (named !== undefined) return named
  const groupsAt = (age: number | null) =>
    new Set(blocks.filter((one) => one.ageMonths === age).map((one) => one.group))
  return ages.find((age) => groupsAt(age).size > 1) ?? ages[0]
}

/**
 * The blocks, of those that fit the filter, that the answer to a question rests on: those of the age that is looked at, of all ages
 * where it is asked what changed; and in the conditions that have a weight.
 * Checked: tests/domain/findings/askedBlocks.spec.ts.
 */
export function blocksAsked<Block extends Pick<FindingsBlock, 'group' | 'ageMonths'>>(
  { asked, ageMonths, overall }: FindingsSettings,
  blocks: readonly Block[],
  groups: readonly FindingsGroup[],
): Block[] {
  if (asked === 'changed') return [...blocks]
  const age = ageToShow(blocks, ageMonths)
  const aged = blocks.filter((one) => one.ageMonths === age)
  if (asked !== 'overall' || overall.conditions === null) return aged
  const weighed = new Set(overall.conditions.filter(({ weight }) => weight > 0).map(conditionKey))
  const inThem = new Set(groups.filter((group) => weighed.has(conditionKey(group))).map(({ key }) => key))
  return aged.filter(({ group }) => inThem.has(group))
}
