import { createHash } from 'node:crypto'
import type { ArchiveReader } from '#archive/archiveReader.ts'
import type { Findings, FindingsFilter, FindingsGroup, FindingsQuestion } from '#contract/findings/procedures.ts'
import { findingUnits } from '#domain/findings/lines/findingLines.ts'
import type { RememberedLines } from '#domain/findings/lines/rememberedLines.ts'
import { type ObservedBreak, observedBreaks } from '#domain/findings/observedBreak.ts'
import { canonicalJson } from '#domain/text/canonicalJson.ts'

/** A group by what its blocks have in common, so that every reader can word it in units of his own. */
const keyOf = ({ adhesive, jointType, bondLineGapMm, exposure }: Omit<FindingsGroup, 'key'>) =>
  JSON.stringify([adhesive, jointType, bondLineGapMm, exposure])

function fits(filter: FindingsFilter): (one: ObservedBreak) => boolean {
  const among = <Value>(list: readonly Value[] | null, value: Value) => list === null || list.includes(value)
  return ({ adhesive, jointType, exposure, bondLineGapMm }) =>
    among(filter.adhesives, adhesive) &&
    among(filter.jointTypes, jointType) &&
    among(filter.exposures, exposure) &&
    among(filter.bondLineGapsMm, bondLineGapMm)
}

/** Findings about the results of an archive, as they are now; hears how many parts are done. */
export function answerFindings(
  archive: Pick<ArchiveReader, 'observations'>,
  { options, filter }: FindingsQuestion,
  memory: RememberedLines,
  onProgress: (done: number, total: number) => void,
): Findings {
  const breaks = archive.observations().filter(fits(filter))
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
  const observations = used.map(({ one }) => one)
  const blocks = used.map(({ one, from }) => ({
    group: one.group,
    ageMonths: one.ageMonths,
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
    groups: [...traits.values()].filter(({ key }) => names.has(key)),
    blocks,
    ...memory.linesOf(findingUnits(observations, options), onProgress),
    dataSha256: createHash('sha256').update(canonicalJson(blocks)).digest('hex'),
  }
}
