/** One block as the statistics see it: everything else in findings takes these and nothing else. */
export type Observation = {
  readonly group: string
  /** Age of the group that it belongs to, that of its pull where it has one; null: not asked after. */
  readonly ageMonths: number | null
  /** Age at the break, where that is another; absent: the same. */
  readonly ageAtBreakMonths?: number | null
  /** How people call the block; null: it has no name. */
  readonly specimen: string | null
  readonly strengthMPa: number
  /** Share of torn wood; null: not recorded, which counts as a bond failure. */
  readonly woodFailurePercent: number | null
  readonly board: string | null
  /** Why a person left it out; null: it counts. */
  readonly excludedBecause: string | null
  /** Nobody measured it: the virtual press or the demo study made it up. */
  readonly simulated: boolean
}

/** What torn wood does to a result. */
export type Treatment = {
  readonly woodFailure: 'observed' | 'bond-only' | 'censored' | 'adjusted'
  /** A block with at least so much torn wood is a wood failure, percent. */
  readonly limitPercent: number
  /** adjusted: strength x (1 + factor x wood failure / 100). */
  readonly adjustFactor: number
}

/** Every strength as it was seen. */
export const asObserved: Treatment = { woodFailure: 'observed', limitPercent: 75, adjustFactor: 1 }

/** Blocks of one group at one age. */
export type Cell = {
  readonly group: string
  readonly ageMonths: number | null
  /** Those that count, as observed. */
  readonly counted: readonly Observation[]
  readonly excluded: number
}

/** Whether the wood gave way rather than the bond: "at or above" the limit. Checked: tests/domain/findings/observation.spec.ts. */
export function isWoodFailure(
  one: Pick<Observation, 'woodFailurePercent'>,
  { limitPercent }: Pick<Treatment, 'limitPercent'>,
): boolean {
  return one.woodFailurePercent !== null && one.woodFailurePercent >= limitPercent
}

/** Strengths of blocks whose bond failed and of those whose wood did, MPa. Checked: tests/domain/findings/observation.spec.ts. */
export function censoredStrengths(
  counted: readonly Pick<Observation, 'strengthMPa' | 'woodFailurePercent'>[],
  treatment: Pick<Treatment, 'limitPercent'>,
): { failed: number[]; censored: number[] } {
  const of = (wood: boolean) =>
    counted.filter((one) => isWoodFailure(one, treatment) === wood).map(({ strengthMPa }) => strengthMPa)
  return { failed: of(false), censored: of(true) }
}

/** Beyond these, MPa, fourth powers of strengths leave the numbers that there are: one such slip would leave nothing to be said of all others. */
const reckonable = { least: 1e-70, most: 1e70 }

const counts = ({ excludedBecause, strengthMPa }: Observation) =>
  excludedBecause === null && strengthMPa >= reckonable.least && strengthMPa <= reckonable.most

/** Blocks by group and age, groups in the given order, ages rising; what is no strength of any unit counts as excluded. Checked: tests/domain/findings/observation.spec.ts. */
export function cellsOf(observations: readonly Observation[]): Cell[] {
  const byGroup = new Map<string, Map<number | null, Observation[]>>()
  for (const one of observations) {
    const ages = byGroup.get(one.group) ?? new Map<number | null, Observation[]>()
    byGroup.set(one.group, ages)
    const cell = ages.get(one.ageMonths)
    if (cell === undefined) ages.set(one.ageMonths, [one])
    else cell.push(one)
  }
  return [...byGroup].flatMap(([group, ages]) =>
    [...ages]
      .sort(([one], [other]) => (one ?? -1) - (other ?? -1))
      .map(([ageMonths, all]) => {
        const counted = all.filter(counts)
        return { group, ageMonths, counted, excluded: all.length - counted.length }
      }),
  )
}

/**
 * Blocks of a cell under a treatment of torn wood, with their strengths in MPa: all as observed (and under `censored`, where only
 * the fits know of it), those whose bond failed, or all with the strength raised for torn wood.
 * Checked: tests/domain/findings/observation.spec.ts.
 */
export function treatedBlocks<One extends Pick<Observation, 'strengthMPa' | 'woodFailurePercent'>>(
  counted: readonly One[],
  treatment: Treatment,
): { block: One; strengthMPa: number }[] {
  const kept = treatment.woodFailure === 'bond-only' ? counted.filter((one) => !isWoodFailure(one, treatment)) : counted
  const factor = treatment.woodFailure === 'adjusted' ? treatment.adjustFactor : 0
  return kept.map((block) => ({
    block,
    strengthMPa: block.strengthMPa * (1 + (factor * (block.woodFailurePercent ?? 0)) / 100),
  }))
}
