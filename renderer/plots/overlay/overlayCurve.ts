import { between } from '#domain/numbers/between.ts'
import type { MinMaxLevels } from '../minMaxLevels.ts'

/** A curve among others: drawn at ((t - originS) / timeUnit, force / forceUnit). */
export type OverlayCurve = {
  key: number
  /** How it is named where it is pointed out. */
  label: string
  levels: MinMaxLevels
  /** How many samples are stored; more than `levels` holds when it was thinned on its way. */
  samples: number
  originS: number
  timeUnit: number
  forceUnit: number
  /** Drawn dashed. */
  setAside: boolean
  /** Marked with a shape and these words at this place of the time axis. */
  outlying: { at: number; words: string } | null
}

/** Pointwise median of the curves with a band; NaN where there is none. In units of the axes. `curvesAt`: of how many curves. */
export type OverlayMedian = Record<'grid' | 'median' | 'lower' | 'upper' | 'curvesAt', Float64Array>

/** Whether a curve was moved to other axes, on which a view that was zoomed into shows something else. */
export function liesElsewhere(curve: OverlayCurve, before: OverlayCurve): boolean {
  return curve.originS !== before.originS || curve.timeUnit !== before.timeUnit || curve.forceUnit !== before.forceUnit
}

/** Where a curve lies on the time axis. */
export function curveExtent({ levels, originS, timeUnit }: OverlayCurve): { from: number; to: number } | null {
  const { timeS } = levels
  if (timeS.length === 0) return null
  return { from: (timeS[0]! - originS) / timeUnit, to: (timeS[timeS.length - 1]! - originS) / timeUnit }
}

/** The value of a curve at a place of the time axis, by the straight line between its samples; null beyond its ends. */
export function valueAt(
  { levels, originS, timeUnit, forceUnit }: Pick<OverlayCurve, 'levels' | 'originS' | 'timeUnit' | 'forceUnit'>,
  at: number,
): number | null {
  const value = between(levels.timeS, levels.force, at * timeUnit + originS)
  return value === null ? null : value / forceUnit
}
