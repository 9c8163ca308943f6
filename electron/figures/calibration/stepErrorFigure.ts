import type { CalibrationStep } from '#contract/calibration/calibrationAssessment.ts'
import { classLimits } from '#domain/calibration/steps/accuracyClass.ts'
import { stepErrorsWords, stepErrorWords } from '#words/calibration/charts/stepErrorWords.ts'
import { classWords } from '#words/calibration/rangeWords.ts'
import type { Quantity } from '#words/units/quantities.ts'
import type { Figure, FigureSize } from '../drawing/figure.ts'
import { type Level, pointPlot } from '../points/pointPlot.ts'

/** The mean error of every step in percent of its force, between the limits of the classes. */
export function stepErrorFigure(
  steps: readonly Pick<CalibrationStep, 'forceN' | 'q'>[],
  force: Quantity,
  size: FigureSize,
): Figure {
  const errors = steps.flatMap(({ forceN, q }) => (q === null ? [] : [{ forceN, errorPercent: q }]))
  return pointPlot(
    {
      title: 'Relative error q of every step over force, with the limits of the classes for it',
      description: stepErrorsWords(errors, force),
      points: errors.map((error) => ({
        x: error.forceN * force.factor,
        y: error.errorPercent,
        shape: 'diamond',
        words: stepErrorWords(error, force),
      })),
      levels: limitsInView(errors.map(({ errorPercent }) => errorPercent)),
      xTitle: `force, ${force.unit}`,
      yTitle: 'relative error q, %',
      heightEm: 17,
      keys: [{ name: 'Dashed: limits of q alone. The class of a step also depends on b, v, f0 and a.', sign: null }],
    },
    size,
  )
}

/** The limits up to the first class that holds every error: more would flatten the picture. */
export function limitsInView(errors: readonly number[]): Level[] {
  const most = errors.reduce((size, error) => Math.max(size, Math.abs(error)), 0)
  const upTo = classLimits.findIndex((limits) => most <= limits.q)
  const shown = classLimits.slice(0, upTo < 0 ? classLimits.length : upTo + 1)
  return [
    { y: 0, name: '', ink: 'zero' },
    ...shown.flatMap(({ class: accuracy, q }): Level[] => [
      { y: q, name: `q, ${classWords(accuracy)}`, ink: 'limit' },
      { y: -q, name: '', ink: 'limit' },
    ]),
  ]
}
