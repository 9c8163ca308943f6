// Held by tests/browser/breaks/curveReview.spec.ts.
import type { BreakRecord } from '#contract/breaks/break.ts'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { loadCurveFigure } from '#figures/breaks/loadCurveFigure.ts'
import type { FigureSize, Figure as Picture } from '#figures/drawing/figure.ts'
import { loadCurveTitle } from '#words/breaks/curveWords.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { isInCounts, sceneInForce } from './sceneInForce.ts'

/** The whole of a curve, with as many samples as a figure of the widest window shows apart. */
export const wholeCurve = { maxPoints: 4000, fromS: null, toS: null } as const

/** The figure of a curve with what its evaluation in force says of it. */
export function curvePicture(
  record: BreakRecord,
  curve: ForceCurve,
  quantities: Quantities,
): (size: FigureSize) => Picture {
  const { unit, factor } = quantities.force
  const loadCurve = {
    title: loadCurveTitle(record.summary),
    curve,
    scene: sceneInForce(record, curve, { chosen: null, seatedLine: false }, quantities),
    shown: isInCounts(record)
      ? { name: 'reading' as const, unit: 'counts', factor: 1 }
      : { name: 'load' as const, unit, factor },
    heightEm: 22,
  }
  return (size) => loadCurveFigure(loadCurve, size)
}
