import type { ForceScale, ReadingUnit } from '#contract/calibration/forceScale.ts'

/** Newtons in one unit; exact by definition: 1 lbf = 4.4482216152605 N, g_n = 9.80665 m/s2. */
const newtons: Readonly<Record<Exclude<ReadingUnit, 'counts'>, number>> = {
  N: 1,
  kN: 1000,
  lbf: 4.4482216152605,
  kgf: 9.80665,
  kg: 9.80665,
  g: 0.00980665,
}

/**
 * Force of one stored reading in N, before tare; null where there is no scale. Written here a second time on purpose: `verify`
 * must not prove the program's arithmetic with the arithmetic that made the result.
 */
export function independentForceN(reading: number, scale: ForceScale, unit: ReadingUnit): number | null {
  switch (scale.kind) {
    case 'none':
      return null
    case 'uncalibrated-scale':
      return reading * scale.nPerCount
    case 'device-unit':
      // A unit that the readings carry themselves goes before the one that was chosen for them.
      return reading * newtons[unit === 'counts' ? scale.unit : unit]
    case 'calibration':
      return scale.coefficients.reduceRight((sum, coefficient) => sum * reading + coefficient, 0)
  }
}
