import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult, LoadCourse } from '#contract/breaks/evaluation.ts'
import type { ForceScale, ReadingUnit } from '#contract/calibration/forceScale.ts'
import { newtonsPerKilogramForce, newtonsPerPoundForce } from '../../units/factors.ts'

/** Newtons in one unit that a device may claim. kg and g are read as the weight of that mass under standard gravity. */
const newtonsPerUnit: Record<Exclude<ReadingUnit, 'counts'>, number> = {
  N: 1,
  kN: 1000,
  lbf: newtonsPerPoundForce,
  kgf: newtonsPerKilogramForce,
  kg: newtonsPerKilogramForce,
  g: newtonsPerKilogramForce / 1000,
}

/**
 * The function from a reading to force in N before tare; null when there is no scale (force is then unknown).
 *
 *   none                F unknown
 *   uncalibrated-scale  F = s r                       s N per count, below 0 for a cell wired in reverse
 *   device-unit         F = u r                       u N per unit of the reading; the reading's own unit, if it has one,
 *                                                     goes before the unit that the scale names
 *   calibration         F = b0 + b1 r + b2 r² + ...   by Horner's rule
 *
 * Throws RangeError for coefficients that are not finite. Checked: tests/domain/calibration/scale/forceScale.spec.ts against
 * the certified NIST StRD Pontius polynomial.
 */
export function forceOfReading(scale: ForceScale, unit: ReadingUnit): ((reading: number) => number) | null {
  switch (scale.kind) {
    case 'none':
      return null
    case 'uncalibrated-scale': {
      const { nPerCount } = scale
      if (!Number.isFinite(nPerCount)) throw new RangeError('forceOfReading requires a finite scale')
      return (reading) => nPerCount * reading
    }
    case 'device-unit': {
      const factor = newtonsPerUnit[unit === 'counts' ? scale.unit : unit]
      return (reading) => factor * reading
    }
    case 'calibration':
      return polynomial(scale.coefficients)
  }
}

function polynomial(coefficients: readonly number[]): (reading: number) => number {
  if (coefficients.length === 0 || !coefficients.every(Number.isFinite))
    throw new RangeError('forceOfReading requires finite coefficients')
  if (coefficients.length === 2) {
    const [b0, b1] = coefficients as [number, number]
    return (reading) => b0 + b1 * reading
  }
  return (reading) => {
    let forceN = 0
    for (let power = coefficients.length - 1; power >= 0; power--) forceN = forceN * reading + coefficients[power]!
    return forceN
  }
}

/**
 * Force after tare of every reading, in N; without a scale the readings themselves after tare.
 *
 *   F_i = f(r_i) − tare
 *
 * Throws RangeError for a tare that is not finite. Checked: tests/domain/calibration/scale/forceScale.spec.ts.
 */
export function taredForce(
  readings: Float64Array,
  scale: ForceScale,
  unit: ReadingUnit,
  tareOffset: number,
): { force: Float64Array; unit: 'N' | 'counts' } {
  if (!Number.isFinite(tareOffset)) throw new RangeError('taredForce requires a finite tare')
  const toForce = forceOfReading(scale, unit)
  const force = new Float64Array(readings.length)
  for (let i = 0; i < readings.length; i++) {
    const reading = readings[i]!
    force[i] = (toForce === null ? reading : toForce(reading)) - tareOffset
  }
  return { force, unit: toForce === null ? 'counts' : 'N' }
}

/** Settings for readings that have no scale: a rated load in newtons says nothing of counts. */
export const settingsWithoutForce = (settings: DetectionSettings): DetectionSettings => ({
  ...settings,
  capacityN: null,
})

/** A result found on readings that have no scale: what would be in newtons cannot be had and is null. */
export function withoutForce(result: EvaluationResult): EvaluationResult {
  return {
    ...result,
    peakN: null,
    noiseN: null,
    loadingRateNPerS: null,
    samplingBoundN: null,
    afterBreakN: null,
    flags: [...new Set([...result.flags, 'no-scale' as const])],
    events: result.events.map((event) => ({ ...event, dropN: null, fromN: null, meanDropN: null, leastDropN: null })),
    course: result.course === null ? null : courseWithoutForce(result.course),
  }
}

const courseWithoutForce = (course: LoadCourse): LoadCourse => ({
  ...course,
  meanRateNPerS: null,
  rates: [],
  toe: null,
  impulseNs: null,
  workJ: null,
})
