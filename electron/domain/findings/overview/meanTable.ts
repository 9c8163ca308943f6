import { momentsOf } from '../../numbers/moments.ts'
import { naturalKey } from '../../text/naturalOrder.ts'
import { type Observation, type Treatment, treatedBlocks } from '../observation.ts'
import { counts } from './groupFigures.ts'
import type { OverviewGroup } from './overviewGroups.ts'

/** The mean of a group; null where there is none. */
export type GroupMean = Omit<OverviewGroup, 'blocks'> & {
  /** Blocks that are in the mean. */
  readonly n: number
  readonly meanMPa: number | null
  /** The mean in percent of the reference's in the same condition at the same age; null: one of the two has no mean, or none is chosen. */
  readonly percentOfReference: number | null
}

/**
 * Means of groups under a treatment of torn wood, beside those of a reference adhesive; null: none.
 *
 *   x̄ = Σ xᵢ / n      100 (x̄ / x̄(reference))
 *
 * `censored` is no treatment of a plain mean and gives the means as observed.
 * Checked: tests/domain/findings/overview/meanTable.spec.ts.
 */
export function meanTable(
  groups: readonly OverviewGroup[],
  treatment: Treatment,
  reference: string | null,
): GroupMean[] {
  const means = groups.map(({ blocks, ...traits }) => {
    const strengths = treatedBlocks(blocks.flatMap(observed), treatment).map(({ strengthMPa }) => strengthMPa)
    return { ...traits, n: strengths.length, meanMPa: strengths.length === 0 ? null : momentsOf(strengths).mean }
  })
  if (reference === null) return means.map((mean) => ({ ...mean, percentOfReference: null }))
  const ofReference = new Map(
    means.flatMap((mean) =>
      naturalKey(mean.adhesive) === naturalKey(reference) ? [[conditionKey(mean), mean.meanMPa]] : [],
    ),
  )
  return means.map((mean) => {
    const against = ofReference.get(conditionKey(mean)) ?? null
    return {
      ...mean,
      percentOfReference: mean.meanMPa === null || against === null ? null : 100 * (mean.meanMPa / against),
    }
  })
}

function observed(block: OverviewGroup['blocks'][number]): Observation[] {
  const { strengthMPa, woodFailurePercent } = block
  if (!counts(block) || strengthMPa === null) return []
  const rest = {
    group: '',
    ageMonths: null,
    ageAtBreakMonths: null,
    specimen: null,
    board: null,
    excludedBecause: null,
    simulated: false,
  }
  return [{ ...rest, strengthMPa, woodFailurePercent }]
}

function conditionKey({ jointType, bondLineGapMm, exposure, ageMonths }: Omit<OverviewGroup, 'blocks' | 'adhesive'>) {
  return JSON.stringify([jointType, bondLineGapMm, exposure, ageMonths])
}
