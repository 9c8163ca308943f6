import type { BreakRecord } from '#contract/breaks/break.ts'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { bareScene, type CurveScene, sceneOf } from '#figures/breaks/curveScene.ts'
import { writeNumber } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import type { CurveLook } from './curveLook.ts'

/** Whether the curve of a break is in counts, because no scale makes forces of them. */
export function isInCounts(record: BreakRecord): boolean {
  return (resultInForce(record) ?? record.header).scale.kind === 'none'
}

/** What the evaluation in force and a person's word say of a curve, to be drawn on it. */
export function sceneInForce(
  record: BreakRecord,
  curve: Pick<ForceCurve, 'timeS' | 'force'>,
  { chosen, seatedLine }: Pick<CurveLook, 'chosen' | 'seatedLine'>,
  quantities: Quantities,
): CurveScene {
  const inForce = resultInForce(record)
  if (inForce === null) return bareScene
  const inCounts = isInCounts(record)
  const { overruled, peakN } = record.summary
  return sceneOf({
    result: inForce.result,
    curve,
    word: overruled === null ? null : { overruled, peakN },
    chosen,
    seatedLine,
    capacityN: inCounts ? null : record.header.settings.capacityN,
    force: inCounts ? (value) => `${writeNumber(value, 0)} counts` : quantities.force.text,
  })
}
