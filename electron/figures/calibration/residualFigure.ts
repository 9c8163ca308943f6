import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { residualsWords, residualWords, runsWords } from '#words/calibration/charts/residualWords.ts'
import { countOf } from '#words/units/counts.ts'
import type { Quantity } from '#words/units/quantities.ts'
import type { Key } from '../axes/keyRows.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import { type PointShape, pointShapes } from '../drawing/mark.ts'
import { pointMark } from '../drawing/pointShape.ts'
import { pointPlot } from '../points/pointPlot.ts'

/** A reading of a calibration with its place among all readings, from 1, and force found minus force applied. */
export type Residual = Pick<CalibrationRow, 'forceN' | 'run' | 'direction'> & { number: number; residualN: number }

/**
 * How far each reading lies from the curve, over force: a shape for each run, hollow going down.
 * `soFar`: the routine is still under way.
 */
export function residualFigure(
  { residuals, soFar }: { residuals: readonly Residual[]; soFar: boolean },
  force: Quantity,
  size: FigureSize,
): Figure {
  const { factor, unit } = force
  const readings = countOf(residuals.length, 'reading')
  return pointPlot(
    {
      title: soFar ? 'Residuals of the readings so far over force' : `Residuals of ${readings} over force`,
      description: residualsWords(residuals, force),
      points: residuals.map((residual) => ({
        x: residual.forceN * factor,
        y: residual.residualN * factor,
        shape: shapeOfRun(residual.run),
        hollow: residual.direction === 'down',
        words: residualWords(residual, force),
      })),
      levels: [{ y: 0, name: '', ink: 'zero' }],
      xTitle: `force, ${unit}`,
      yTitle: soFar
        ? `residual of the readings so far, ${unit}`
        : `residual, ${unit}: force by the curve minus force applied`,
      heightEm: soFar ? 13 : 17,
      keys: runKeys(residuals, size.emPx),
    },
    size,
  )
}

function shapeOfRun(run: number): PointShape {
  return pointShapes[(run - 1) % pointShapes.length]!
}

function runKeys(residuals: readonly Residual[], em: number): Key[] {
  const runs = residuals.reduce((most, { run }) => Math.max(most, run), 1)
  const keys = pointShapes.slice(0, runs).map(
    (shape, index): Key => ({
      name: runsWords(index + 1, runs, pointShapes.length),
      sign: (at) => [pointMark(shape, at, em / 12.5, false)],
    }),
  )
  const down = residuals.some(({ direction, forceN }) => direction === 'down' && forceN > 0)
  return down ? [...keys, { name: 'filled: going up, hollow: going down', sign: null }] : keys
}
