import type { CurvePoint } from '#domain/programme/study/differenceCurve.ts'
import { curvePointWords, curveWords } from '#words/programme/study/planWords.ts'
import { percentWords } from '#words/units/numbers.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import { pointMark } from '../drawing/pointShape.ts'
import { pointPlot } from '../points/pointPlot.ts'

export type DifferenceFigure = {
  curve: readonly CurvePoint[]
  /** Blocks a cell as planned; ringed. */
  planned: number
  /** A line across; null: none is wanted. */
  wantedPercent: number | null
}

/** The smallest difference that is found over the blocks a cell, with the plan marked on it. */
export function differenceFigure({ curve, planned, wantedPercent }: DifferenceFigure, size: FigureSize): Figure {
  const chosen = curve.find(({ blocks }) => blocks === planned) ?? null
  return pointPlot(
    {
      title: 'Smallest difference that is found, over the blocks a cell',
      description: curveWords(chosen),
      points: curve.map(({ blocks, differencePercent }) => ({
        x: blocks,
        y: differencePercent,
        shape: blocks === planned ? 'diamond' : 'circle',
        hollow: blocks !== planned,
        ringed: blocks === planned,
        words: curvePointWords(blocks, differencePercent),
      })),
      levels: [
        { y: 0, name: '', ink: 'zero' },
        ...(wantedPercent === null
          ? []
          : [{ y: wantedPercent, name: `wanted: ${percentWords(wantedPercent)}`, ink: 'limit' as const }]),
      ],
      xTitle: 'blocks a cell',
      yTitle: 'smallest difference found, % of the mean',
      joined: true,
      heightEm: 17,
      keys:
        chosen === null
          ? []
          : [{ name: 'as planned', sign: (at) => [pointMark('diamond', at, size.emPx / 12.5, false)] }],
    },
    size,
  )
}
