/**
 * First index in [from, to) for which something holds that goes on holding from there on; `to` where it never does.
 * O(log n) questions. Checked: tests/domain/numbers/risingSearch.spec.ts against a plain search.
 */
export function firstWhere(from: number, to: number, holds: (index: number) => boolean): number {
  let low = from
  let high = to
  while (low < high) {
    const middle = (low + high) >>> 1
    if (holds(middle)) high = middle
    else low = middle + 1
  }
  return low
}

/** Index of the first of rising values at or above a value; their number where there is none. */
export function firstAtOrAfter(rising: Float64Array, wanted: number): number {
  return firstWhere(0, rising.length, (i) => rising[i]! >= wanted)
}

/**
 * Index of the last of rising values at or below a value, of those in [from, to); `from` where the first is above it
 * already.
 */
export function lastAtOrBefore(rising: Float64Array, wanted: number, from = 0, to = rising.length): number {
  return firstWhere(from + 1, to, (i) => rising[i]! > wanted) - 1
}

/** Index of the nearest of rising values, the lower of two equally near, also beyond the ends; −1 where there are none. */
export function nearestIndex(rising: Float64Array, wanted: number): number {
  if (rising.length === 0) return -1
  const low = lastAtOrBefore(rising, wanted)
  const high = Math.min(low + 1, rising.length - 1)
  return Math.abs(rising[low]! - wanted) <= Math.abs(rising[high]! - wanted) ? low : high
}
