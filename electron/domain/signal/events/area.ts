import type { LoadedCurve } from './loadedCurve.ts'

/**
 * Area under points (x, y) that are joined by straight lines, in the unit of x times the unit of y.
 *
 *   A = Σ (x[i+1] − x[i]) (y[i] + y[i+1]) / 2
 *
 * x may go back; what lies under the way back counts against. Throws RangeError for arrays of unequal length, for fewer than
 * two points and for values that are not finite. Source: composite trapezoidal rule, textbook. Checked:
 * tests/domain/signal/events/area.spec.ts against scipy.integrate.trapezoid and areas known in closed form.
 */
export function trapezoidArea(x: Float64Array, y: Float64Array): number {
  if (x.length !== y.length) throw new RangeError('trapezoidArea requires as many y as x')
  if (x.length < 2) throw new RangeError('trapezoidArea requires at least two points')
  let area = 0
  for (let i = 1; i < x.length; i++) area += (x[i]! - x[i - 1]!) * ((y[i - 1]! + y[i]!) / 2)
  if (!Number.isFinite(area)) throw new RangeError('trapezoidArea requires finite values')
  return area
}

/**
 * Area under load and time from the onset to a time, N s.
 *
 *   ∫ (F − F0) dt      F force, F0 level at rest; trapezoidal rule over the means of the curve
 *
 * The load is taken to rise from nothing between the onset and the first mean, and to stay what it was from the last
 * mean that ends before `untilS`. null: fewer than two means lie before that. Checked: tests/domain/signal/events/area.spec.ts.
 */
export function loadImpulse(
  curve: Pick<LoadedCurve, 'timeS' | 'force' | 'zero' | 'onsetS' | 'intervalS' | 'samplesPerMean'>,
  untilS: number,
): number | null {
  const { timeS, force, zero, onsetS } = curve
  const halfMeanS = ((curve.samplesPerMean - 1) * curve.intervalS) / 2
  let count = 0
  while (count < timeS.length && timeS[count]! + halfMeanS <= untilS) count += 1
  if (count < 2) return null
  const load = force.subarray(0, count).map((value) => value - zero)
  const firstS = Math.max(0, timeS[0]! - onsetS)
  const lastS = untilS - timeS[count - 1]!
  return (firstS * load[0]!) / 2 + trapezoidArea(timeS.subarray(0, count), load) + lastS * load[count - 1]!
}

/**
 * Work at a constant speed of the press, J.
 *
 *   W = I v / 1000      I area under load and time N s, v speed mm/s; 1 N mm = 0.001 J
 *
 * The press counts with all its give: frame and cell stretch too. Throws RangeError for a speed that is not above 0.
 * Checked: tests/domain/signal/events/area.spec.ts.
 */
export function workAtSpeed(impulseNs: number, speedMmPerS: number): number {
  if (!(speedMmPerS > 0)) throw new RangeError('workAtSpeed requires a speed above 0')
  return (impulseNs * speedMmPerS) / 1000
}

/**
 * Work by a displacement that was measured along with the load, J.
 *
 *   W = ∫ F dx / 1000      F load N, x displacement mm; trapezoidal rule; 1 N mm = 0.001 J
 *
 * A gauge may count either way: the direction in which it moved from the first to the last point is taken as forward.
 * Throws RangeError as trapezoidArea does. Checked: tests/domain/signal/events/area.spec.ts.
 */
export function workByDisplacement(displacementMm: Float64Array, loadN: Float64Array): number {
  const area = trapezoidArea(displacementMm, loadN)
  const movedMm = displacementMm[displacementMm.length - 1]! - displacementMm[0]!
  return (movedMm < 0 ? -area : area) / 1000
}
