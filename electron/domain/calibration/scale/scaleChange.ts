import type { ForceScale, ReadingUnit } from '#contract/calibration/forceScale.ts'
import { forceOfReading } from './forceScale.ts'

/** A zero and a threshold under one scale. */
export type ScaledZero = { readonly tareOffset: number; readonly startThresholdN: number | null }

/**
 * Zero offset and start threshold under another scale, from those under the old one.
 *
 *   r₀: f_old(r₀) = t_old      t_new = f_new(r₀)      θ_new = θ_old |f_new'(r₀) / f_old'(r₀)|
 *
 * r₀ the reading at the zero, found by secant steps from `near`, as long as they bring it nearer (exact for straight scales);
 * slopes over one unit of the reading. Without a scale a force is the reading itself.
 * Throws RangeError when the old scale has no such reading.
 * Source: definition. Checked: tests/domain/calibration/scale/scaleChange.spec.ts.
 */
export function zeroUnderScale(
  old: ForceScale,
  next: ForceScale,
  unit: ReadingUnit,
  zero: ScaledZero,
  near: number,
): ScaledZero {
  const identity = (reading: number) => reading
  const fromOld = forceOfReading(old, unit) ?? identity
  const toNext = forceOfReading(next, unit) ?? identity
  const slope = (force: (reading: number) => number, reading: number) => force(reading + 0.5) - force(reading - 0.5)
  const missing = (reading: number) => zero.tareOffset - fromOld(reading)
  let reading = near
  let following = near
  do {
    reading = following
    following = reading + missing(reading) / slope(fromOld, reading)
  } while (Math.abs(missing(following)) < Math.abs(missing(reading)))
  if (!Number.isFinite(following)) throw new RangeError('zeroUnderScale requires an old scale that reaches its zero')
  const ratio = Math.abs(slope(toNext, reading) / slope(fromOld, reading))
  return {
    tareOffset: toNext(reading),
    startThresholdN: zero.startThresholdN === null ? null : zero.startThresholdN * ratio,
  }
}
