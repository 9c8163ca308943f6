import type { ForceScale, ReadingUnit } from '#contract/calibration/forceScale.ts'
import { forceOfReading } from '../calibration/scale/forceScale.ts'

/**
 * The load that a person's word puts in place of the peak found, N: the force of its sample under scale and tare of the
 * result in force.
 *
 *   F = f(r) − tare
 *
 * Null: the word names no sample and lets the found peak stand, or there is no result yet. peakN null: no scale.
 * Checked: tests/domain/strength/overruledPeak.spec.ts.
 */
export function overruledPeak(
  reading: number | null,
  result: { readonly scale: ForceScale; readonly tareOffset: number } | null,
  unit: ReadingUnit,
): { peakN: number | null } | null {
  if (reading === null || result === null) return null
  const toForceN = forceOfReading(result.scale, unit)
  return { peakN: toForceN === null ? null : toForceN(reading) - result.tareOffset }
}
