import { firstWhere } from '../../numbers/risingSearch.ts'
import type { LoadedCurve } from './loadedCurve.ts'

const roundingS = 1e-6

/** Index of the first mean after a time. */
export function firstAfter(curve: Pick<LoadedCurve, 'timeS'>, timeS: number): number {
  return firstWhere(0, curve.timeS.length, (i) => curve.timeS[i]! > timeS)
}

/** The means up to a time, in the memory of the curve. */
export function upTo(curve: LoadedCurve, timeS: number): Pick<LoadedCurve, 'timeS' | 'force'> {
  const end = firstAfter(curve, timeS)
  return { timeS: curve.timeS.subarray(0, end), force: curve.force.subarray(0, end) }
}

/** How many means lie wholly before the break; all of them without one. */
export function meansBeforeBreak(curve: LoadedCurve): number {
  const { breakS, intervalS, samplesPerMean } = curve
  if (breakS === null) return curve.timeS.length
  // A mean is placed at the middle of its samples; times are rounded to microseconds.
  return firstAfter(curve, breakS - ((samplesPerMean - 1) / 2) * intervalS + roundingS)
}
