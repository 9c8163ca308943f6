// Held by tests/browser/breaks/compareRun.spec.ts.
import type { Comparison } from '#contract/breaks/comparison.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { comparedCurvesFigure, type OverlaidCurve } from '#figures/breaks/comparedCurvesFigure.ts'
import { gapsOf } from '#figures/breaks/curveScene.ts'
import type { FigureSize, Figure as Picture } from '#figures/drawing/figure.ts'
import { comparedAxes, comparedTitle } from '#words/breaks/compare/comparedFigureWords.ts'
import type { Quantities } from '#words/units/quantities.ts'
import type { OverlayCurve, OverlayMedian } from '../../../plots/overlay/overlayCurve.ts'
import type { LoadedCurve } from './loadedCurves.ts'

export type ComparedView = {
  comparison: Comparison
  loaded: ReadonlyMap<number, LoadedCurve>
  curves: readonly OverlayCurve[]
  median: OverlayMedian | null
  /** The curve that lies over the others. */
  chosen: number | null
  /** The group that all of them are of, as the page names it. */
  group: string | null
}

/** The figure of compared curves, whole, as the page shows them. */
export function comparedPicture(view: ComparedView, quantities: Quantities): (size: FigureSize) => Picture {
  const { comparison, curves, median, group } = view
  const compared = {
    title: comparedTitle(curves.length, group),
    curves: curves.map((curve) => overlaid(curve, view)),
    median,
    axes: comparedAxes(comparison, quantities.force),
    factor: comparison.unit === 'N' ? quantities.force.factor : 1,
    heightEm: 26,
  }
  return (size) => comparedCurvesFigure(compared, size)
}

function overlaid(curve: OverlayCurve, { loaded, chosen }: ComparedView): OverlaidCurve {
  const { key, label, levels, originS, timeUnit, forceUnit, setAside, outlying } = curve
  const record = loaded.get(key)?.record
  const inForce = record === undefined ? null : resultInForce(record)
  return {
    ...{ name: label, curve: levels, originS, timeUnit, forceUnit, setAside, outlying },
    gaps: inForce === null ? [] : gapsOf(inForce.result),
    isForemost: key === chosen,
  }
}
