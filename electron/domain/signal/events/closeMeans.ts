/**
 * For each of the first `count` points of a curve the mean of it and the points less than `spanS` before it, and of it
 * and those less than `spanS` after it. Checked: tests/domain/signal/events/closeMeans.spec.ts.
 */
export function closeMeans(
  { timeS, force }: { timeS: Float64Array; force: Float64Array },
  count: number,
  spanS: number,
): { before: Float64Array; after: Float64Array } {
  const before = new Float64Array(count)
  const after = new Float64Array(count)
  for (let i = 0, first = 0, end = 0; i < count; i++) {
    while (timeS[i]! - timeS[first]! >= spanS) first += 1
    while (end < count && (end <= i || timeS[end]! - timeS[i]! < spanS)) end += 1
    before[i] = meanOf(force, first, i + 1)
    after[i] = meanOf(force, i, end)
  }
  return { before, after }
}

/** Mean of the values [from, to), at least one. */
export function meanOf(values: Float64Array, from: number, to: number): number {
  let sum = 0
  for (let k = from; k < to; k++) sum += values[k]!
  return sum / (to - from)
}

/**
 * For each of the first `count` points of a curve the lowest of the values at those after it that lie no more than `spanS`
 * later, the next one always among them; Infinity for the last. Runs in O(n).
 * Checked: tests/domain/signal/events/closeMeans.spec.ts.
 */
export function lowestAhead(values: Float64Array, timeS: Float64Array, count: number, spanS: number): Float64Array {
  const lowest = new Float64Array(count).fill(Number.POSITIVE_INFINITY)
  // Points that may still be the lowest of a span: the furthest, which is the lowest, first.
  const waiting = new Int32Array(count)
  let first = 0
  let end = 0
  for (let i = count - 2; i >= 0; i--) {
    const next = values[i + 1]!
    while (end > first && values[waiting[end - 1]!]! >= next) end -= 1
    waiting[end] = i + 1
    end += 1
    while (waiting[first] !== i + 1 && timeS[waiting[first]!]! - timeS[i]! > spanS) first += 1
    lowest[i] = values[waiting[first]!]!
  }
  return lowest
}
