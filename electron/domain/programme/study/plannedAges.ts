import type { FindingsGroup } from '#contract/findings/procedures.ts'
import { naturalKey } from '../../text/naturalOrder.ts'
import { cellsOf, type StudyPlan } from './cells.ts'

/** What blocks of one series have in common. */
export type SeriesTraits = Pick<FindingsGroup, 'adhesive' | 'jointType' | 'bondLineGapMm' | 'exposure'>

/** The ages at which any of the studies breaks blocks of a series, rising, in months; names agree whatever their case and accents. */
export function plannedAges(plans: readonly StudyPlan[]): (series: SeriesTraits) => number[] {
  const ages = new Map<string, Set<number>>()
  for (const { gapMm, ageMonths, ...names } of plans.flatMap(cellsOf)) {
    const key = traitsKey({ ...names, bondLineGapMm: gapMm })
    const before = ages.get(key)
    if (before === undefined) ages.set(key, new Set([ageMonths]))
    else before.add(ageMonths)
  }
  return (series) => [...(ages.get(traitsKey(series)) ?? [])].sort((one, other) => one - other)
}

/** The same text for blocks that were made alike, whatever the case and accents of the names. */
export function traitsKey({ adhesive, jointType, bondLineGapMm, exposure }: SeriesTraits): string {
  return JSON.stringify([...[adhesive, jointType, exposure].map(naturalKey), bondLineGapMm])
}
