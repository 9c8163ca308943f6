import type { BreakRecord } from '#contract/breaks/break.ts'
import type { ForceCurve, RawCurve } from '#contract/breaks/curve.ts'
import type { CurveFilter } from '#contract/breaks/curveFilter.ts'
import { Trouble } from '#contract/errors.ts'
import { filterCurve } from '#domain/signal/filters/filterCurve.ts'
import { filterRefusal } from '#domain/signal/filters/filterRefusal.ts'
import type { Refusal } from '#domain/signal/filters/refusal.ts'
import { windowRefusal } from '#domain/signal/filters/windowRefusal.ts'
import { slopeOfCurve } from '#domain/signal/loading/slope.ts'
import { stretchesBetweenGaps } from '#domain/signal/stream/stretches.ts'
import { type DrawnRange, drawnPart, forceOfBreak } from './drawnCurve.ts'

type Reviewed = Pick<BreakRecord, 'header' | 'evaluations' | 'inForceId'>

/**
 * A stored curve as a filter shows it: the whole of it filtered, then cut and thinned as `drawnCurve` does. Nothing stored
 * is touched, and no peak is taken from it. Throws Trouble `invalid-input` where the filter does not fit the curve.
 */
export function filteredCurve(record: Reviewed, raw: RawCurve, filter: CurveFilter, range: DrawnRange): ForceCurve {
  const { timeS } = raw
  const stretches = stretchesBetweenGaps(timeS)
  refuse(filterRefusal(filter, stretches))
  const { force, unit } = forceOfBreak(record, raw)
  const filtered = filterCurve({ timeS, force }, filter, stretches)
  return { ...drawnPart({ timeS, force: filtered }, range), unit, samples: timeS.length }
}

/**
 * Slope of a stored curve in force per second, over a window about each sample, then cut and thinned as `drawnCurve` does.
 * Throws Trouble `invalid-input` for a window too short for the curve's samples.
 */
export function slopeCurve(record: Reviewed, raw: RawCurve, windowS: number, range: DrawnRange): ForceCurve {
  const { timeS } = raw
  const stretches = stretchesBetweenGaps(timeS)
  refuse(windowRefusal(windowS, stretches))
  const { force, unit } = forceOfBreak(record, raw)
  return { ...drawnPart(slopeOfCurve({ timeS, force }, windowS, stretches), range), unit, samples: timeS.length }
}

function refuse(refusal: Refusal | null): void {
  if (refusal !== null) throw new Trouble('invalid-input', refusal.because, refusal.cure)
}
