// Held by tests/browser/programme/overviewRun.spec.ts.
import { findingsOptions } from '#contract/findings/options.ts'
import { counts } from '#domain/findings/overview/groupFigures.ts'
import { type GroupMean, meanTable } from '#domain/findings/overview/meanTable.ts'
import type { OverviewGroup } from '#domain/findings/overview/overviewGroups.ts'
import type { FigureSize } from '#figures/drawing/figure.ts'
import { heatTable } from '#figures/findings/overview/heatTable.ts'
import { type GroupsFigure, overviewFigure } from '#figures/findings/overview/overviewFigure.ts'
import { groupMeanWords, overviewGroupWords } from '#words/findings/overviewWords.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { meanTreatments, type OverviewSettings } from './overviewSettings.ts'

/** What is drawn of groups, and what is said of each. */
export type Drawing = {
  groups: readonly OverviewGroup[]
  draw(size: FigureSize, heightPx?: number | null): GroupsFigure
  words: readonly string[]
}

/** The chosen view of groups. */
export function drawingOf(
  groups: readonly OverviewGroup[],
  settings: OverviewSettings,
  quantities: Quantities,
): Drawing {
  if (settings.view === 'blocks')
    return {
      groups,
      draw: (size, heightPx = null) => overviewFigure(groups, quantities, size, heightPx),
      words: groups.map((group) => overviewGroupWords(group, quantities)),
    }
  const reference = settings.reference === '' ? null : settings.reference
  // Spares and what else has no age has no mean either, unless it was broken
  const dated = groups.filter(({ ageMonths, blocks }) => ageMonths !== null || blocks.some(counts))
  const means = meanTable(dated, findingsOptions.parse({ woodFailure: settings.treatment }), reference)
  const treatment = meanTreatments.find(({ value }) => value === settings.treatment)!.words
  return {
    groups: dated,
    draw: (size, heightPx = null) => heatTable(means, { treatment, reference }, quantities, size, heightPx),
    words: means.map((mean: GroupMean) => groupMeanWords(mean, reference, quantities)),
  }
}
