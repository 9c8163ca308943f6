/** A second-order low-pass: y[i] = a0 x[i] + a1 x[i−1] + a2 x[i−2] + b1 y[i−1] + b2 y[i−2]. */
export type LowPass = { a0: number; a1: number; a2: number; b1: number; b2: number }

/** What the amplitude of one pass is at the −3 dB point of both, (√2 − 1)^(1/4): each pass takes half of it away. */
export const onePassShare = (Math.SQRT2 - 1) ** 0.25

/**
 * Second-order Butterworth low-pass by the bilinear transform, with gain 1 for a constant.
 *
 *   D  = 1 + √2 w + w²        w tangent of half the angle that one interval is of the −3 dB frequency of one pass
 *   a0 = a2 = w² / D   a1 = 2 a0   b1 = −2 (w² − 1) / D   b2 = (−1 + √2 w − w²) / D
 *
 * Throws RangeError for w that is not above 0. Source: SAE J211-1 and ISO 6487, annex on the filter algorithm.
 * Checked: tests/domain/signal/filters/twoPass.spec.ts against scipy.signal.butter.
 */
export function secondOrderLowPass(w: number): LowPass {
  if (!(w > 0 && w < Number.POSITIVE_INFINITY)) throw new RangeError('secondOrderLowPass requires a frequency above 0')
  const d = 1 + Math.SQRT2 * w + w * w
  const a0 = (w * w) / d
  return { a0, a1: 2 * a0, a2: a0, b1: (-2 * (w * w - 1)) / d, b2: (-1 + Math.SQRT2 * w - w * w) / d }
}

/**
 * Evenly spaced values through a low-pass forward and then backward, so that nothing is shifted in time and the amplitude
 * falls by the square of one pass.
 *
 * Ends: before the first and after the last value the series goes on for `padding` values (fewer where the series is
 * shorter), turned about its end point (2 x[0] − x[k]), so that a ramp goes on as a ramp; each pass starts as if its first
 * value had always stood. What was added is cut away.
 *
 * For looking, never for the peak. A two-pass filter spreads a drop to both sides: at the sample of the peak a third to a
 * half is gone; where a slow ramp drops at once the curve stands about 3 % above the peak just before; where the ramp is
 * steep it never reaches the peak.
 * Throws RangeError for padding below 0. Checked: tests/domain/signal/filters/twoPass.spec.ts against
 * scipy.signal.filtfilt(b, a, x, padtype='odd', padlen=padding).
 */
export function filterTwoPass(values: Float64Array, lowPass: LowPass, padding: number): Float64Array {
  if (!(padding >= 0)) throw new RangeError('filterTwoPass requires a padding of 0 or more')
  const count = values.length
  if (count < 2) return values.slice()
  const pad = Math.min(Math.floor(padding), count - 1)
  // About the first value, so that a large offset costs no digits and a constant stays what it is to the last bit.
  const first = values[0]!
  const last = values[count - 1]! - first
  const padded = new Float64Array(count + 2 * pad)
  for (let i = 0; i < count; i++) padded[pad + i] = values[i]! - first
  for (let k = 1; k <= pad; k++) {
    padded[pad - k] = first - values[k]!
    padded[pad + count - 1 + k] = 2 * last - (values[count - 1 - k]! - first)
  }
  passForward(padded, lowPass)
  passBackward(padded, lowPass)
  const filtered = padded.slice(pad, pad + count)
  for (let i = 0; i < count; i++) filtered[i]! += first
  return filtered
}

function passForward(values: Float64Array, { a0, a1, a2, b1, b2 }: LowPass): void {
  let x1 = values[0]!
  let x2 = x1
  let y1 = x1
  let y2 = x1
  for (let i = 0; i < values.length; i++) {
    const x = values[i]!
    const y = a0 * x + a1 * x1 + a2 * x2 + b1 * y1 + b2 * y2
    values[i] = y
    x2 = x1
    x1 = x
    y2 = y1
    y1 = y
  }
}

function passBackward(values: Float64Array, { a0, a1, a2, b1, b2 }: LowPass): void {
  let x1 = values[values.length - 1]!
  let x2 = x1
  let y1 = x1
  let y2 = x1
  for (let i = values.length - 1; i >= 0; i--) {
    const x = values[i]!
    const y = a0 * x + a1 * x1 + a2 * x2 + b1 * y1 + b2 * y2
    values[i] = y
    x2 = x1
    x1 = x
    y2 = y1
    y1 = y
  }
}
