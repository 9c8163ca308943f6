import { type RankedGroup, rankFigureWords, rankReadingWords, rankWords } from '#words/findings/rankWords.ts'
import { writeCount } from '#words/units/numbers.ts'
import type { Axis } from '../axes/axis.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import { rowPlot, rowSign, spanKey } from '../points/rowPlot.ts'

/** Groups in the order of their means, each with the places that the data leave possible; filled where the first is among them. */
export function rankFigure(groups: readonly RankedGroup[], size: FigureSize): Figure {
  const { emPx: em } = size
  const ordered = groups.toSorted((one, other) => one.rank - other.rank)
  return rowPlot(
    {
      title: 'Ranking with the places that are possible',
      description: rankFigureWords(ordered),
      rows: ordered.map((group) => ({
        name: rankWords(group, ordered.length),
        value: group.rank,
        low: group.low,
        high: group.high,
        hollow: group.low !== 1,
        words: rankReadingWords(group, ordered.length),
      })),
      x: placesAxis(ordered.length),
      xTitle: 'place by the mean, 1 the strongest',
      heldAgainst: null,
      keys: [
        { name: 'the first place is possible', sign: (at) => [rowSign(false, at, em)] },
        { name: 'it is not', sign: (at) => [rowSign(true, at, em)] },
        spanKey('places possible', em),
      ],
    },
    size,
  )
}

/** Places 1, 2, 3, ... with half a place of room; about twenty at most are named. */
function placesAxis(count: number): Axis {
  const most = Math.max(count, 1)
  const every = Math.ceil(most / 20)
  const ticks = Array.from({ length: most }, (_, i) => i + 1)
    .filter((place) => place === 1 || place % every === 0)
    .map((value) => ({ value, label: writeCount(value) }))
  return { from: 0.5, to: most + 0.5, ticks }
}
