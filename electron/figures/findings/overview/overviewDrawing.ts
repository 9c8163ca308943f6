// Held by tests/exchange/findings/overviewSheet.spec.ts.
import type { OverviewView } from '#contract/findings/overview.ts'
import { counts } from '#domain/findings/overview/groupFigures.ts'
import { meanTable } from '#domain/findings/overview/meanTable.ts'
import type { OverviewGroup } from '#domain/findings/overview/overviewGroups.ts'
import { groupMeanWords, overviewGroupWords } from '#words/findings/overviewWords.ts'
import type { Quantities } from '#words/units/quantities.ts'
import type { FigureSize } from '../../drawing/figure.ts'
import { heatTable } from './heatTable.ts'
import { type GroupsFigure, overviewFigure } from './overviewFigure.ts'

/** What is drawn of groups, and what is said of each. */
export type OverviewDrawing = {
  groups: readonly OverviewGroup[]
  draw(size: FigureSize, heightPx?: number | null): GroupsFigure
  words: readonly string[]
}

/** The chosen view of groups. */
export function overviewDrawing(
  groups: readonly OverviewGroup[],
  view: OverviewView,
  quantities: Quantities,
): OverviewDrawing {
  if (view.kind === 'blocks')
    return {
      groups,
      draw: (size, heightPx = null) => overviewFigure(groups, quantities, size, heightPx),
      words: groups.map((group) => overviewGroupWords(group, quantities)),
    }
  const { reference, treatment } = view
  // Spares and what else has no age has no mean either, unless it was broken
  const dated = groups.filter(({ ageMonths, blocks }) => ageMonths !== null || blocks.some(counts))
  const means = meanTable(dated, treatment, reference)
  return {
    groups: dated,
    draw: (size, heightPx = null) => heatTable(means, view, quantities, size, heightPx),
    words: means.map((mean) => groupMeanWords(mean, reference, quantities)),
  }
}

/** A3 across with a margin of 10 mm, in pixels of 1/96 inch: what the figure has of it below a line of words. */
export const overviewSheetSize = { widthPx: 1510, heightPx: 1000, emPx: 11 } as const
