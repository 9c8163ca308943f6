import type { MeanTreatment } from '#contract/findings/overview.ts'
import { momentsOf } from '../../numbers/moments.ts'
import { naturalKey } from '../../text/naturalOrder.ts'
import { censoredMean, type NoFit } from '../censored/censoredFit.ts'
import { censoredStrengths, treatedBlocks } from '../observation.ts'
import { counts } from './groupFigures.ts'
import type { OverviewGroup } from './overviewGroups.ts'

/** The mean of a group; null where there is none. */
export type GroupMean = Omit<OverviewGroup, 'blocks'> & {
  /** Blocks that are in the mean, and how many of them say only that their bond held more. */
  readonly n: number
  readonly held: number
  readonly meanMPa: number | null
  /** Why no distribution could be fitted to blocks that are there; null: it was, or none is. */
  readonly noFit: NoFit | null
  /** The mean in percent of the reference's in the same condition at the same age; null: one of the two has no mean, or none is chosen. */
  readonly percentOfReference: number | null
}

/**
 * Means of groups under a treatment of torn wood, beside those of a reference adhesive; null: none.
 *
 *   x̄ = Σ xᵢ / n      100 (x̄ / x̄(reference))
 *
 * A censored mean is that of the distribution fitted to the bonds.
 * Checked: tests/domain/findings/overview/meanTable.spec.ts.
 */
export function meanTable(
  groups: readonly OverviewGroup[],
  treatment: MeanTreatment,
  reference: string | null,
): GroupMean[] {
  const means = groups.map(({ blocks, ...traits }) => {
    const seen = blocks.flatMap(observed)
    return { ...traits, ...(treatment.woodFailure === 'censored' ? fitted(seen, treatment) : plain(seen, treatment)) }
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

type Seen = { strengthMPa: number; woodFailurePercent: number | null }
type Mean = Pick<GroupMean, 'n' | 'held' | 'meanMPa' | 'noFit'>

function plain(seen: readonly Seen[], treatment: MeanTreatment): Mean {
  const strengths = treatedBlocks(seen, treatment).map(({ strengthMPa }) => strengthMPa)
  const meanMPa = strengths.length === 0 ? null : momentsOf(strengths).mean
  return { n: strengths.length, held: 0, meanMPa, noFit: null }
}

function fitted(seen: readonly Seen[], treatment: MeanTreatment): Mean {
  const strengths = censoredStrengths(seen, treatment)
  const counts = { n: seen.length, held: strengths.censored.length }
  if (seen.length === 0) return { ...counts, meanMPa: null, noFit: null }
  const mean = censoredMean(strengths, treatment.distribution)
  return typeof mean === 'string'
    ? { ...counts, meanMPa: null, noFit: mean }
    : { ...counts, meanMPa: mean, noFit: null }
}

function observed(block: OverviewGroup['blocks'][number]): Seen[] {
  const { strengthMPa, woodFailurePercent } = block
  return !counts(block) || strengthMPa === null ? [] : [{ strengthMPa, woodFailurePercent }]
}

function conditionKey({ jointType, bondLineGapMm, exposure, ageMonths }: Omit<OverviewGroup, 'blocks' | 'adhesive'>) {
  return JSON.stringify([jointType, bondLineGapMm, exposure, ageMonths])
}
