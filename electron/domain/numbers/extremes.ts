/** Places of the lowest and the highest of some values, in order; one place twice where all are equal. */
export type Extremes = { first: number; second: number }

/**
 * Finds the lowest and the highest of the values with an index in [from, to), the first of equals; at least one.
 * Writes into `found`, so that nothing is allocated for a stretch. Checked: tests/domain/numbers/extremes.spec.ts.
 */
export function findExtremes(valueAt: (index: number) => number, from: number, to: number, found: Extremes): void {
  let low = from
  let high = from
  let lowest = valueAt(from)
  let highest = lowest
  for (let i = from + 1; i < to; i++) {
    const value = valueAt(i)
    if (value < lowest) {
      low = i
      lowest = value
    }
    if (value > highest) {
      high = i
      highest = value
    }
  }
  found.first = Math.min(low, high)
  found.second = Math.max(low, high)
}
