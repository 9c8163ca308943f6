// Held by tests/engine/findings/answerFindings.spec.ts.
import type { FindingsBlock, FindingsFilter, FindingsGroup } from '#contract/findings/procedures.ts'
import type { Observation } from '#domain/findings/observation.ts'
import { type ObservedBreak, observedBreaks } from '#domain/findings/observedBreak.ts'
import { hasTraits, isAmong } from '#domain/findings/traitsFilter.ts'

/** A group by what its blocks have in common, so that every reader can word it in units of his own. */
const keyOf = ({ adhesive, jointType, bondLineGapMm, exposure }: Omit<FindingsGroup, 'key'>) =>
  JSON.stringify([adhesive, jointType, bondLineGapMm, exposure])

/** The results that a question is about, of all that there are: what the statistics take, the groups, and the way back to each block, in one order. */
export function askedResults(
  observed: readonly ObservedBreak[],
  filter: FindingsFilter,
): { observations: Observation[]; groups: FindingsGroup[]; blocks: FindingsBlock[] } {
  const isAsked = ({ studyId }: ObservedBreak) => filter.studyId === null || filter.studyId === studyId
  const breaks = observed.filter((one) => isAsked(one) && hasTraits(one, filter))
  const traits = new Map<string, FindingsGroup>()
  const all = observedBreaks(breaks, (one) => {
    const { adhesive, jointType, bondLineGapMm, exposure } = one
    const key = keyOf(one)
    traits.set(key, { key, adhesive, jointType, bondLineGapMm, exposure })
    return key
  })
  const used = all.flatMap((one, i) => (isAmong(filter.agesMonths, one.ageMonths) ? [{ one, from: breaks[i]! }] : []))
  const blocks = used.map(({ one, from }) => ({
    group: one.group,
    ageMonths: one.ageMonths,
    ageAtBreakMonths: one.ageAtBreakMonths ?? one.ageMonths,
    specimenId: from.specimenId,
    breakId: from.breakId,
    number: from.number,
    strengthMPa: one.strengthMPa,
    woodFailurePercent: one.woodFailurePercent,
    excludedBecause: one.excludedBecause,
    simulated: one.simulated,
  }))
  const names = new Set(blocks.map(({ group }) => group))
  return {
    observations: used.map(({ one }) => one),
    groups: [...traits.values()].filter(({ key }) => names.has(key)),
    blocks,
  }
}
