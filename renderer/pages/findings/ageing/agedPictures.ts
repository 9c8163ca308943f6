import type { AgeingAnswer } from '#contract/findings/ageing.ts'
import type { Findings } from '#contract/findings/procedures.ts'
import { isWoodFailure, type Treatment, treatedBlocks } from '#domain/findings/observation.ts'
import type { AgeingPicture } from '#figures/findings/ageingFigure.ts'
import { linesOf } from '#words/findings/answerWords.ts'

/** How far above the strongest block a scale reaches for a band that goes on, as a share of it. */
const mostAbove = 1.3

/** What the figure of each series shows, all on one scale of strength. */
export function agedPictures(
  found: Findings,
  { series }: AgeingAnswer,
  { treatment, sharePercent, name }: { treatment: Treatment; sharePercent: number; name(group: string): string },
): AgeingPicture[] {
  const heightEm = series.length === 1 ? 26 : 19
  const parts = series.map(({ group, curve, upcomingMonths, endMonths }) => {
    const means = linesOf(found.lines, 'group-summary').flatMap((line) => {
      const { ageMonths, n, meanMPa, meanLowMPa: lowMPa, meanHighMPa: highMPa } = line
      return line.group === group && ageMonths !== null ? [{ ageMonths, n, meanMPa, lowMPa, highMPa }] : []
    })
    const first = means[0]?.meanMPa ?? null
    return {
      ...{ name: name(group), blocks: blocksOf(found, group, treatment), means, curve, upcomingMonths, endMonths },
      level: first === null ? null : { sharePercent, strengthMPa: (first * sharePercent) / 100 },
      ...{ heightEm, withKeys: series.length === 1 },
    }
  })
  const strongest = Math.max(
    0,
    ...parts.flatMap(({ blocks, means }) => [
      ...blocks.map(({ strengthMPa }) => strengthMPa),
      ...means.map(({ meanMPa }) => meanMPa ?? 0),
    ]),
  )
  const highest = Math.max(
    strongest,
    ...parts.flatMap(({ means, curve }) => [
      ...means.map(({ highMPa }) => highMPa ?? 0),
      ...(curve ?? []).map(({ highMPa }) => highMPa),
    ]),
  )
  return parts.map((part) => ({ ...part, reachMPa: Math.min(highest, mostAbove * strongest) }))
}

function blocksOf({ blocks }: Findings, group: string, treatment: Treatment): AgeingPicture['blocks'] {
  const counted = blocks.flatMap((one) =>
    one.group === group && one.ageAtBreakMonths !== null && one.excludedBecause === null
      ? [{ ...one, ageAtBreakMonths: one.ageAtBreakMonths, specimen: one.number, board: null }]
      : [],
  )
  return treatedBlocks(counted, treatment).map(({ block, strengthMPa }) => ({
    name: block.specimen ?? '',
    ageMonths: block.ageAtBreakMonths ?? 0,
    strengthMPa,
    lowerLimit: treatment.woodFailure === 'censored' && isWoodFailure(block, treatment),
    woodFailurePercent: block.woodFailurePercent,
  }))
}
