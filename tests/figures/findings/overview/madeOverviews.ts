import { findingsOptions } from '#contract/findings/options.ts'
import { overviewFilter } from '#contract/findings/overview.ts'
import { meanTable } from '#domain/findings/overview/meanTable.ts'
import { overviewGroups } from '#domain/findings/overview/overviewGroups.ts'
import { overviewOf } from '#domain/findings/overview/overviewOf.ts'
import { heatTable } from '#figures/findings/overview/heatTable.ts'
import { overviewFigure } from '#figures/findings/overview/overviewFigure.ts'
import { madeOverviewBlocks } from '#tests/fakes/scripted/scriptedOverview.ts'
import type { MadeFigure } from '#tests/figures/madeFigure.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

/** The overview and its table of means in exact states; `name` is that of an adhesive. */
export function madeOverviews(name: string): MadeFigure[] {
  const quantities = quantitiesIn('SI')
  const blocks = madeOverviewBlocks().map((block) =>
    block.adhesive === 'PVA V5' ? { ...block, adhesive: name } : block,
  )
  const groups = overviewGroups(overviewOf(blocks, overviewFilter.parse({})))
  const means = (reference: string | null) => meanTable(groups, findingsOptions.parse({}), reference)
  const terms = { treatment: 'as observed' }
  return [
    { name: 'overview', draw: (size) => overviewFigure(groups, quantities, size) },
    { name: 'overview-sheet', draw: (size) => overviewFigure(groups, quantities, size, 700) },
    { name: 'overview-empty', draw: (size) => overviewFigure(groups.slice(-1), quantities, size) },
    { name: 'heat-table', draw: (size) => heatTable(means(null), { ...terms, reference: null }, quantities, size) },
    {
      name: 'heat-table-reference',
      draw: (size) => heatTable(means(name), { ...terms, reference: name }, quantities, size),
    },
  ]
}
