import type { DriftPoint } from '#domain/calibration/control/driftSeries.ts'
import { driftWords } from '#words/calibration/charts/driftWords.ts'
import { writeFixed } from '#words/units/numbers.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { dayWords } from '#words/units/times.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import { pointPlot } from '../points/pointPlot.ts'

/** Slope or zero of one device over its calibrations, against the first of them. */
export function driftFigure(
  series: readonly DriftPoint[],
  what: 'slope' | 'zero',
  force: Quantity,
  size: FigureSize,
): Figure {
  const unit = what === 'slope' ? '%' : force.unit
  const shown = series.map(({ slopePercent, zeroN }) => (what === 'slope' ? slopePercent : zeroN * force.factor))
  const words = shown.map((value) => `${writeFixed(value, what === 'slope' ? 3 : 2)} ${unit}`)
  const days = series.map(({ madeAt }) => dayWords(madeAt))
  return pointPlot(
    {
      title: `${what === 'slope' ? 'Slope' : 'Zero'} of every calibration against the first`,
      description: driftWords(
        series.map(({ madeAt }) => madeAt),
        words.at(-1) ?? '',
      ),
      points: shown.map((y, x) => ({ x, y, shape: 'square', words: `${days[x]}, ${series[x]!.name}: ${words[x]}` })),
      levels: [{ y: 0, name: '', ink: 'zero' }],
      xTitle: '',
      yTitle: `${what}, ${unit} from the first`,
      joined: true,
      heightEm: 14,
      xNames: days,
    },
    size,
  )
}
