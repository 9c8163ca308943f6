/**
 * Quantile of values that are sorted already, in their unit.
 *
 *   h = (n − 1) p      q = x[⌊h⌋] + (h − ⌊h⌋) (x[⌊h⌋+1] − x[⌊h⌋])      x sorted, counted from 0
 *
 * Definition 7 of Hyndman and Fan, the default of R and numpy: the median is the middle value or the mean of the middle two.
 * Throws RangeError for no values or p outside 0..1.
 * Source: Hyndman and Fan, The American Statistician 50 (1996) 361. Checked: tests/domain/numbers/quantile.spec.ts
 * against numpy.quantile and R quantile(type = 7).
 */
export function quantileOfSorted(sorted: ArrayLike<number>, p: number): number {
  const count = sorted.length
  if (count === 0) throw new RangeError('quantileOfSorted requires at least one value')
  if (!(p >= 0 && p <= 1)) throw new RangeError('quantileOfSorted requires a probability from 0 to 1')
  const place = (count - 1) * p
  const below = Math.floor(place)
  const value = sorted[below]!
  return place === below ? value : value + (place - below) * (sorted[below + 1]! - value)
}

/**
 * Median of values that are sorted already, in their unit: the middle one, or the mean of the middle two; NaN for no values.
 *
 * Checked: tests/domain/numbers/quantile.spec.ts against numpy.median.
 */
export function medianOfSorted(sorted: ArrayLike<number>): number {
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2
}

/**
 * Median of values in any order, in their unit: the middle one, or the mean of the middle two.
 *
 * Throws RangeError for no values. Checked: tests/domain/numbers/quantile.spec.ts against numpy.median.
 */
export function median(values: Iterable<number>): number {
  return quantileOfSorted(Float64Array.from(values).sort(), 0.5)
}
