const bins = 256

/**
 * The value that divides values into two classes whose means lie furthest apart for their shares; above it lies the upper class.
 *
 *   greatest  w₀ w₁ (m₀ − m₁)²  over all limits between 256 equal bins from lowest to highest, the bin below it counted whole
 *
 * Null where all values are one. Throws RangeError for no values.
 * Source: N. Otsu, IEEE Transactions on Systems, Man, and Cybernetics 9 (1979) 62.
 * Checked: tests/domain/strength/face/otsuThreshold.spec.ts against skimage.filters.threshold_otsu 0.26,
 * which names the middle of the bin below.
 */
export function otsuThreshold(values: ArrayLike<number>): number | null {
  if (values.length === 0) throw new RangeError('otsuThreshold requires at least one value')
  let low = values[0]!
  let high = low
  for (let i = 1; i < values.length; i++) {
    low = Math.min(low, values[i]!)
    high = Math.max(high, values[i]!)
  }
  if (!(high > low)) return null
  const counts = new Float64Array(bins)
  const scale = bins / (high - low)
  for (let i = 0; i < values.length; i++) counts[Math.min(bins - 1, Math.floor((values[i]! - low) * scale))]! += 1
  const all = counts.reduce((sum, count, bin) => sum + count * bin, 0)
  let n = 0
  let sum = 0
  let best = -1
  let at = 0
  for (let bin = 0; bin < bins - 1; bin++) {
    n += counts[bin]!
    sum += counts[bin]! * bin
    const rest = values.length - n
    const apart = n > 0 && rest > 0 ? n * rest * (sum / n - (all - sum) / rest) ** 2 : -1
    if (apart > best) {
      best = apart
      at = bin
    }
  }
  return low + (at + 1) / scale
}
