import type { AgeingQuestion, BoardsAtAge, SeriesAhead } from '#contract/findings/ageing.ts'
import { momentsOf } from '../../numbers/moments.ts'
import { boardEffect } from '../boardEffect.ts'
import type { FindingUnit } from '../lines/findingUnit.ts'
import { cellsOf, type Observation, treatedBlocks } from '../observation.ts'
import { seriesOf } from './series.ts'
import { seriesAhead } from './seriesAhead.ts'
import { type SlopesTogether, slopesTogether } from './slopesTogether.ts'

/** A part of the answer to what changes with age. */
export type AgeingPart =
  | { readonly of: 'series'; readonly found: SeriesAhead }
  | { readonly of: 'together'; readonly found: SlopesTogether }
  | { readonly of: 'boards'; readonly found: BoardsAtAge }

/** A part that there may be none of, as a unit that says so by holding nothing. */
function unit<Of extends AgeingPart['of']>(
  of: Of,
  data: unknown,
  find: () => Extract<AgeingPart, { of: Of }>['found'] | null,
): FindingUnit<AgeingPart> {
  return {
    key: `${of} ${JSON.stringify(data)}`,
    *lines() {
      const found = find()
      if (found !== null) yield { of, found } as AgeingPart
    },
  }
}

/**
 * What changes with age, in parts that rest on nothing but what their keys say: the line of each series to the age that `endOf` names
 * for its group, all slopes together, and what the boards do at each age where groups share them.
 * Checked: tests/domain/findings/ageing/ageingParts.spec.ts.
 */
export function ageingUnits(
  observations: readonly Observation[],
  { options, sharePercent, atMonths }: Omit<AgeingQuestion, 'filter'>,
  endOf: (group: string) => number,
): FindingUnit<AgeingPart>[] {
  const { confidence, woodFailure, limitPercent, adjustFactor } = options
  const treatment = { woodFailure, limitPercent, adjustFactor }
  const cells = cellsOf(observations)
  const series = seriesOf(cells, treatment)
  const single = series.map((one) => {
    const endMonths = endOf(one.group)
    const terms = { confidence, endMonths, share: sharePercent / 100, atMonths }
    return unit('series', [one, terms], () => seriesAhead(one, terms))
  })
  const blocksOf = series.map(({ group, ages }) => ({
    group,
    // A line through logarithms needs strengths above 0
    blocks: ages.flatMap(({ blocks }) => blocks).filter(({ strengthMPa }) => strengthMPa > 0),
  }))
  const together = unit('together', [blocksOf, confidence], () => slopesTogether(blocksOf, confidence))
  const byAge = Map.groupBy(cells, ({ ageMonths }) => ageMonths)
  const boards = [...byAge].map(([ageMonths, beside]) => {
    const blocks = beside.flatMap(({ group, counted }) =>
      treatedBlocks(counted, treatment).flatMap(({ block: { board }, strengthMPa }) =>
        board === null ? [] : [{ group, board, strengthMPa }],
      ),
    )
    return unit('boards', [ageMonths, blocks], () => boardsAt(ageMonths, blocks))
  })
  return [...single, together, ...boards]
}

type BoardBlocks = Parameters<typeof boardEffect>[0]

function boardsAt(ageMonths: number | null, blocks: BoardBlocks): BoardsAtAge | null {
  const effect = blocks.length === 0 ? null : boardEffect(blocks)
  if (effect === null) return null
  const { boards, groups, ...rest } = effect
  return {
    ...rest,
    ageMonths,
    boards: boards.length,
    groups: groups.map((one) => {
      const strengths = blocks.flatMap(({ group, strengthMPa }) => (group === one.group ? [strengthMPa] : []))
      return { ...one, plainMPa: momentsOf(strengths).mean }
    }),
  }
}
