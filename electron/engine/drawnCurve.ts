import type { BreakRecord, ForceCurve, RawCurve } from '#contract/records/break.ts'
import { taredForce } from '#domain/force/forceScale.ts'
import { cutToRange, thinByMinMax } from '#domain/signal/thinning.ts'
import { scaleInForce } from './scaleInForce.ts'

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
  const { scale, tareOffset } = scaleInForce(record)
  const { force, unit } = taredForce(raw.readings, scale, record.header.readingUnit, tareOffset)
  const cut = cutToRange({ timeS: raw.timeS, force }, range.fromS, range.toS)
  const drawn = range.maxPoints === null ? cut : thinByMinMax(cut, range.maxPoints)
  // Copies, because a view would carry the memory of the whole curve across a window's border.
  return { timeS: drawn.timeS.slice(), force: drawn.force.slice(), unit, samples: raw.timeS.length }
}
