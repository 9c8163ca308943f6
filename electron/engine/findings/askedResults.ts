// Held by tests/engine/findings/answerFindings.spec.ts.
import type { FindingsBlock, FindingsFilter, FindingsGroup } from '#contract/findings/procedures.ts'
import type { Observation } from '#domain/findings/observation.ts'
import { type ObservedBreak, observedBreaks } from '#domain/findings/observedBreak.ts'

/** A group by what its blocks have in common, so that every reader can word it in units of his own. */
const keyOf = ({ adhesive, jointType, bondLineGapMm, exposure }: Omit<FindingsGroup, 'key'>) =>
  JSON.stringify([adhesive, jointType, bondLineGapMm, exposure])

function fits(filter: FindingsFilter): (one: ObservedBreak) => boolean {
  const among = <Value>(list: readonly Value[] | null, value: Value) => list === null || list.includes(value)
  return ({ studyId, adhesive, jointType, exposure, bondLineGapMm }) =>
    (filter.studyId === null || filter.studyId === studyId) &&
    among(filter.adhesives, adhesive) &&
    among(filter.jointTypes, jointType) &&
    among(filter.exposures, exposure) &&
    among(filter.bondLineGapsMm, bondLineGapMm)
}

/** The results that a question is about, of all that there are: what the statistics take, the groups, and the way back to each block, in one order. */
export function askedResults(
  observed: readonly ObservedBreak[],
  filter: FindingsFilter,
): { observations: Observation[]; groups: FindingsGroup[]; blocks: FindingsBlock[] } {
  const breaks = observed.filter(fits(filter))
  const traits = new Map<string, FindingsGroup>()
  const all = observedBreaks(breaks, (one) => {
    const { adhesive, jointType, bondLineGapMm, exposure } = one
    const key = keyOf(one)
    traits.set(key, { key, adhesive, jointType, bondLineGapMm, exposure })
    return key
  })
  const used = all.flatMap((one, i) =>
    filter.agesMonths === null || filter.agesMonths.includes(one.ageMonths) ? [{ one, from: breaks[i]! }] : [],
  )
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
