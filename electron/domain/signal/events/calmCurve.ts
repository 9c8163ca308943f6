import { firstAfter } from './curvePart.ts'
import type { LoadedCurve } from './loadedCurve.ts'

/** The curve is looked at in means over this time, s ... */
const meanS = 0.2
/** ... or this, where noise asks for it; both are less than the stroke of a hand pump. */
const noisyMeanS = 0.5
/** What is told apart in them: this share of the peak, or so many noise SDs of the means. */
export const stepShare = 0.005
export const stepNoise = 3

/** A curve in longer means, with the noise SD of these. */
export type CalmCurve = { timeS: Float64Array; force: Float64Array; noise: number }

/**
 * The curve up to a time in means over 0.2 s, or over 0.5 s where three noise SDs of the shorter ones are more than 0.005 of the
 * peak. Checked: tests/domain/signal/events/calmCurve.spec.ts.
 */
export function calmCurve(curve: LoadedCurve, untilS: number): CalmCurve {
  const { intervalS, samplesPerMean, noise } = curve
  const perMean = (overS: number) => (intervalS > 0 ? Math.max(1, Math.round(overS / (intervalS * samplesPerMean))) : 1)
  const noiseOf = (means: number) => noise / Math.sqrt(samplesPerMean * means)
  let means = perMean(meanS)
  if (stepNoise * noiseOf(means) > stepShare * (curve.peak - curve.zero)) means = perMean(noisyMeanS)
  const length = Math.floor(firstAfter(curve, untilS) / means)
  const timeS = new Float64Array(length)
  const force = new Float64Array(length)
  for (let k = 0; k < length; k++) {
    let sumT = 0
    let sumF = 0
    for (let i = k * means; i < (k + 1) * means; i++) {
      sumT += curve.timeS[i]!
      sumF += curve.force[i]!
    }
    timeS[k] = sumT / means
    force[k] = sumF / means
  }
  return { timeS, force, noise: noiseOf(means) }
}
