import { type LowPass, onePassShare, secondOrderLowPass } from './twoPass.ts'

/** Above this share of half the sample rate little is left to take away, and the transform bends what is taken. */
const highestShareOfNyquist = 0.8
/** Below this share of the sample rate the coefficients lose their digits. */
const lowestShareOfRate = 1e-6

/** Highest frequency that `butterworth` takes at a sample interval, Hz. */
export const highestCutoffHz = (intervalS: number): number => highestShareOfNyquist / (2 * intervalS)
/** Lowest frequency that `butterworth` takes at a sample interval, Hz. */
export const lowestCutoffHz = (intervalS: number): number => lowestShareOfRate / intervalS

/**
 * One pass of a second-order Butterworth low-pass such that both passes of filterTwoPass together are down by 3 dB (power
 * one half) at the cutoff, at any sample rate.
 *
 *   w = tan(π f T) / (√2 − 1)^(1/4)      f cutoff, Hz   T sample interval, s; then secondOrderLowPass(w)
 *
 * For looking at a curve, never for its peak, which the two passes falsify (see filterTwoPass).
 * Throws RangeError for a cutoff above 0.8 of half the sample rate or below a millionth of the rate.
 * Source: the tangent undoes the bilinear transform's bending (any text on digital filters); the fourth root from
 * |H|² = 1 / (1 + (tan(π f T) / w)⁴) in each pass. Checked: tests/domain/signal/filters/butterworth.spec.ts against scipy.
 */
export function butterworth(cutoffHz: number, intervalS: number): LowPass {
  if (!(intervalS > 0)) throw new RangeError('butterworth requires a sample interval above 0')
  if (!(cutoffHz >= lowestCutoffHz(intervalS) && cutoffHz <= highestCutoffHz(intervalS)))
    throw new RangeError(
      `butterworth requires a cutoff from ${lowestCutoffHz(intervalS)} to ${highestCutoffHz(intervalS)} Hz`,
    )
  return secondOrderLowPass(Math.tan(Math.PI * cutoffHz * intervalS) / onePassShare)
}
