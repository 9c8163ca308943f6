import type { FindingsSettings } from '#contract/findings/keptFinding.ts'
import type { FindingsBlock, FindingsFilter, FindingsGroup } from '#contract/findings/procedures.ts'

type Condition = Pick<FindingsGroup, 'jointType' | 'bondLineGapMm' | 'exposure'>

/** What a condition is known by: a joint type, a gap and an exposure. */
export function conditionKey({ jointType, bondLineGapMm, exposure }: Condition): string {
  return JSON.stringify([jointType, bondLineGapMm, exposure])
}

/** Of which blocks a question is asked, as far as its study and single traits say it; null: of all. */
export function filterOf({ asked, studyId, overall, ...picked }: FindingsSettings): Omit<FindingsFilter, 'agesMonths'> {
  if (asked === 'overall')
    return { studyId, adhesives: overallAdhesives(overall), jointTypes: null, exposures: null, bondLineGapsMm: null }
  const { adhesive, jointType, exposure, bondLineGapMm } = picked
  const some = (value: string) => (value === '' ? null : [value])
  return {
    ...{ studyId, adhesives: some(adhesive), jointTypes: some(jointType), exposures: some(exposure) },
    bondLineGapsMm: bondLineGapMm === '' ? null : [bondLineGapMm === 'null' ? null : Number(bondLineGapMm)],
  }
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

/** What settings say of the blocks that are asked about, and nothing else: two questions with the same choice rest on the same blocks. */
export type BlockChoice = {
  readonly filter: ReturnType<typeof filterOf>
  /** As ageToShow takes it; null: all ages. */
  readonly ageMonths: string | null
  /** Keys of the conditions that have a weight; null: all. */
  readonly conditions: readonly string[] | null
}

/**
 * Which blocks the answer to a question rests on: of all ages where it is asked what changed, and of all adhesives too where it is asked
 * what to do next, for the reference is held against those that were chosen. Checked: tests/domain/findings/askedBlocks.spec.ts. */
export function choiceOf(settings: FindingsSettings): BlockChoice {
  const { asked, ageMonths, overall } = settings
  const weighed = asked === 'overall' ? overall.conditions?.filter(({ weight }) => weight > 0) : undefined
  return {
    filter: asked === 'next' ? { ...filterOf(settings), adhesives: null } : filterOf(settings),
    ageMonths: asked === 'changed' || asked === 'next' ? null : ageMonths,
    conditions: weighed?.map(conditionKey) ?? null,
  }
}

/** The chosen blocks, of those that fit the filter. Checked: tests/domain/findings/askedBlocks.spec.ts. */
export function blocksAsked<Block extends Pick<FindingsBlock, 'group' | 'ageMonths'>>(
  { ageMonths, conditions }: BlockChoice,
  blocks: readonly Block[],
  groups: readonly FindingsGroup[],
): Block[] {
  const age = ageMonths === null ? null : ageToShow(blocks, ageMonths)
  const aged = ageMonths === null ? [...blocks] : blocks.filter((one) => one.ageMonths === age)
  if (conditions === null) return aged
  const inThem = new Set(groups.filter((group) => conditions.includes(conditionKey(group))).map(({ key }) => key))
  return aged.filter(({ group }) => inThem.has(group))
}
