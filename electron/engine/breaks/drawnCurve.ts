import type { BreakRecord } from '#contract/breaks/break.ts'
import type { ForceCurve, RawCurve } from '#contract/breaks/curve.ts'
import { taredForce } from '#domain/calibration/scale/forceScale.ts'
import { type Curve, cutToRange, thinByMinMax } from '#domain/signal/stream/thinning.ts'
import { scaleInForce } from '#domain/strength/resultInForce.ts'

export type DrawnRange = { fromS: number | null; toS: number | null; maxPoints: number | null }

/**
 * A stored curve as it is drawn: force after tare under the scale of the result in force (readings where there is none), cut
 * to a range, thinned if asked.
 */
export function drawnCurve(
  record: Pick<BreakRecord, 'header' | 'evaluations' | 'inForceId'>,
  raw: RawCurve,
  range: DrawnRange,
): ForceCurve {
  const { force, unit } = forceOfBreak(record, raw)
  return { ...drawnPart({ timeS: raw.timeS, force }, range), unit, samples: raw.timeS.length }
}

/** All forces of a stored curve after tare, under the scale of the result in force; readings where there is none. */
export function forceOfBreak(
  record: Pick<BreakRecord, 'header' | 'evaluations' | 'inForceId'>,
  raw: RawCurve,
): { force: Float64Array; unit: ForceCurve['unit'] } {
  const { scale, tareOffset } = scaleInForce(record)
  return taredForce(raw.readings, scale, record.header.readingUnit, tareOffset)
}

/** A curve cut to a range, thinned if asked, in arrays of its own. */
export function drawnPart(curve: Curve, range: DrawnRange): Pick<ForceCurve, 'timeS' | 'force'> {
  const { fromS, toS, maxPoints } = range
  const cut = cutToRange(curve, fromS, toS)
  const drawn = maxPoints === null ? cut : thinByMinMax(cut, maxPoints)
  // Copies, because a view would carry the memory of the whole curve across a window's border.
  return { timeS: drawn.timeS.slice(), force: drawn.force.slice() }
}
