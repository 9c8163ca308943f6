import type { BreakRecord, ForceCurve, RawCurve } from '#contract/records/break.ts'
import { taredForce } from '#domain/force/forceScale.ts'
import { cutToRange, thinByMinMax } from '#domain/signal/thinning.ts'

export type DrawnRange = { fromS: number | null; toS: number | null; maxPoints: number | null }

/** A stored curve as it is drawn: force after tare (readings where there is no scale), cut to a range, thinned if asked. */
export function drawnCurve({ header }: Pick<BreakRecord, 'header'>, raw: RawCurve, range: DrawnRange): ForceCurve {
  const { scale, tare, readingUnit } = header
  const { force, unit } = taredForce(raw.readings, scale, readingUnit, tare?.offset ?? 0)
  const cut = cutToRange({ timeS: raw.timeS, force }, range.fromS, range.toS)
  const drawn = range.maxPoints === null ? cut : thinByMinMax(cut, range.maxPoints)
  // Copies, because a view would carry the memory of the whole curve across a window's border.
  return { timeS: drawn.timeS.slice(), force: drawn.force.slice(), unit, samples: raw.timeS.length }
}
