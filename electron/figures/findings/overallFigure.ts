import {
  differs,
  type OverallStanding,
  overallFigureWords,
  ratioWords,
  standingWords,
} from '#words/findings/overallWords.ts'
import { valueAxis } from '../axes/axis.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import { rowPlot, rowSign, spanKey } from '../points/rowPlot.ts'

/** Adhesives by their standing beside the reference over all conditions, filled where they differ from it. */
export function overallFigure(standings: readonly OverallStanding[], reference: string, size: FigureSize): Figure {
  const { widthPx, emPx: em } = size
  const rows = standings.flatMap((standing) => {
    const { adhesive, ratio, low, high } = standing
    if (ratio === null) return []
    const percent = (value: number | null) => (value === null ? null : 100 * value)
    return {
      ...{ name: `${adhesive}: ${ratioWords(standing)}`, value: 100 * ratio, low: percent(low), high: percent(high) },
      ...{ hollow: !differs(standing), words: standingWords(standing, reference) },
    }
  })
  const values = rows.flatMap(({ value, low, high }) => [value, low ?? value, high ?? value])
  return rowPlot(
    {
      title: `Strength relative to ${reference} over all conditions`,
      description: overallFigureWords(standings, reference),
      rows,
      x: valueAxis([100, ...values], Math.min(Math.max(Math.floor(widthPx / (8 * em)), 2), 8)),
      xTitle: `% of ${reference}, mean of the ratios`,
      heldAgainst: 100,
      keys: [
        { name: 'differs from the reference', sign: (at) => [rowSign(false, at, em)] },
        { name: 'not to be told from it', sign: (at) => [rowSign(true, at, em)] },
        spanKey('95 % interval', em),
      ],
    },
    size,
  )
}
