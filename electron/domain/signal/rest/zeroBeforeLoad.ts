import { detectionSettings } from '#contract/breaks/detection.ts'
import { evaluateCurve } from '../loading/evaluateCurve.ts'
import { createSteadinessWatch, defaultSteadiness } from './steadiness.ts'

/** A zero read off a curve: mean and sample SD of so many steady values, in their unit. */
export type CurveZero = { offset: number; sd: number; readings: number }

/** Rest shorter than this, s, says nothing of a zero. */
const leastRestS = 0.2
/** The window leaves this share of a short rest free to move in, so that a toe can stay out of it. */
const windowShare = 0.8
const judgementsPerWindow = 16

/**
 * The level at rest before the load of a whole curve, for a curve whose zero nobody has taken; null where no steady rest
 * of 0.2 s and 5 values lies before the load. Where nothing is loaded, all of the curve is rest.
 *
 *   zero = mean of the values in the last window before the onset that is steady (steadiness.ts)
 *
 * The window is 1 s long, or 0.8 of the rest where that is less; lone glitches are left out.
 * Throws as evaluateCurve does. Common practice, no source. Checked: tests/domain/signal/rest/zeroBeforeLoad.spec.ts.
 */
export function zeroBeforeLoad(timeS: Float64Array, force: Float64Array): CurveZero | null {
  const { onsetTimeS, events } = evaluateCurve(timeS, force, null, detectionSettings.parse({}))
  const glitches = events.filter(({ kind }) => kind === 'glitch')
  const untilS = onsetTimeS ?? Number.POSITIVE_INFINITY
  const restS = untilS - timeS[0]!
  // Without samples it is NaN.
  if (!(restS >= leastRestS)) return null
  const windowS = Math.min(defaultSteadiness.windowS, windowShare * restS)
  const watch = createSteadinessWatch({ ...defaultSteadiness, windowS })
  let zero: CurveZero | null = null
  let judgedS = Number.NEGATIVE_INFINITY
  for (let i = 0; i < timeS.length && timeS[i]! < untilS; i++) {
    const atS = timeS[i]!
    if (glitches.some(({ startTimeS, endTimeS }) => startTimeS <= atS && atS <= endTimeS)) continue
    watch.push(atS, force[i]!)
    if (atS - judgedS < windowS / judgementsPerWindow) continue
    judgedS = atS
    const { mean, sd, readings, unsteadyBecause } = watch.judge()
    if (unsteadyBecause === null) zero = { offset: mean!, sd: sd!, readings }
  }
  return zero
}
