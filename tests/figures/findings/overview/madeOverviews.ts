import { meanTreatment, overviewFilter } from '#contract/findings/overview.ts'
import { meanTable } from '#domain/findings/overview/meanTable.ts'
import { overviewGroups } from '#domain/findings/overview/overviewGroups.ts'
import { overviewOf } from '#domain/findings/overview/overviewOf.ts'
import type { FigureSize } from '#figures/drawing/figure.ts'
import { heatTable, type MeanTableTerms } from '#figures/findings/overview/heatTable.ts'
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
  const treatment = meanTreatment.parse({})
  const censored = meanTreatment.parse({ woodFailure: 'censored', distribution: 'lognormal' })
  const table = (terms: MeanTableTerms) => (size: FigureSize) =>
    heatTable(meanTable(groups, terms.treatment, terms.reference), terms, quantities, size)
  return [
    { name: 'overview', draw: (size) => overviewFigure(groups, quantities, size) },
    { name: 'overview-sheet', draw: (size) => overviewFigure(groups, quantities, size, 700) },
    { name: 'overview-empty', draw: (size) => overviewFigure(groups.slice(-1), quantities, size) },
    { name: 'heat-table', draw: table({ treatment, reference: null }) },
    { name: 'heat-table-censored', draw: table({ treatment: censored, reference: null }) },
    { name: 'heat-table-reference', draw: table({ treatment, reference: name }) },
  ]
}
