import { type LowPass, secondOrderLowPass } from './twoPass.ts'

/** A class is defined for so many samples a second for each Hz of it, and more. */
export const samplesPerClass = 10

/** Frequency at which both passes together let half the power through, Hz: nominally 5/3 of the class. */
export const halfPowerOfClassHz = (frequencyClass: number): number => (frequencyClass * 5) / 3

/** Ratio of the −3 dB frequency of one pass to the class, as the standard prints it. */
const onePassOfClass = 2.0775

/**
 * One pass of a channel frequency class (CFC 60, 180, 600 or 1000) at a sample interval; filterTwoPass runs it forward and
 * backward.
 *
 *   w = tan(2π CFC 2.0775 T / 2)      T sample interval, s; then secondOrderLowPass(w)
 *
 * For looking at a curve, never for its peak, which the two passes falsify (see filterTwoPass).
 * The −3 dB point of both passes lies at 1.667 CFC where T is short; at the lowest rate of a class the transform moves it up
 * by 5 % (CFC 1000 at 10 kHz: 1.749 kHz).
 * Throws RangeError for a sample rate below 10 CFC (less 1 %, by which a device's clock may be slow).
 * Source: SAE J211-1 and ISO 6487. Checked: tests/domain/signal/filters/channelFrequencyClass.spec.ts against their table of
 * coefficients, their −3 dB points and scipy.
 */
export function channelFrequencyClass(frequencyClass: number, intervalS: number): LowPass {
  if (!(frequencyClass > 0 && intervalS > 0)) throw new RangeError('channelFrequencyClass requires values above 0')
  if (!isFastEnough(frequencyClass, intervalS))
    throw new RangeError(`channelFrequencyClass requires ${samplesPerClass * frequencyClass} samples a second`)
  return secondOrderLowPass(Math.tan(Math.PI * frequencyClass * onePassOfClass * intervalS))
}

/** Whether samples come often enough for a class; 1 % less is let pass. */
export const isFastEnough = (frequencyClass: number, intervalS: number): boolean =>
  samplesPerClass * frequencyClass * intervalS <= 1.01
