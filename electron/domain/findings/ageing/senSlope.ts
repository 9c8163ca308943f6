import type { AgedBlock } from './agedBlock.ts'

/** Pairs of blocks of different ages in which the slope from the younger to the older is below m, in n log n steps. */
export function pairsBelow(blocks: readonly AgedBlock[], m: number): number {
  const order = blocks
    .map(({ ageMonths, strengthMPa }) => ({ ageMonths, rest: strengthMPa - m * ageMonths }))
    .sort((one, other) => one.ageMonths - other.ageMonths || one.rest - other.rest)
  return inversions(Float64Array.from(order, ({ rest }) => rest))
}

/** Pairs i before j with a larger value at i; sorts the values. */
function inversions(values: Float64Array<ArrayBuffer>): number {
  let count = 0
  let from = values
  let to = new Float64Array(values.length)
  for (let width = 1; width < values.length; width *= 2) {
    for (let start = 0; start < values.length; start += 2 * width) {
      const middle = Math.min(start + width, values.length)
      const end = Math.min(start + 2 * width, values.length)
      let left = start
      let right = middle
      for (let at = start; at < end; at++)
        if (left < middle && (right >= end || from[left]! <= from[right]!)) to[at] = from[left++]!
        else {
          count += middle - left
          to[at] = from[right++]!
        }
    }
    ;[from, to] = [to, from]
  }
  return count
}

/**
 * Median of the slopes between all pairs of blocks of different ages, MPa a month; null where all ages are equal. It is found by
 * halving, so that ten thousand blocks do not make fifty million slopes.
 *
 * Source: Sen, Journal of the American Statistical Association 63 (1968) 1379. Checked: tests/domain/findings/ageing/senSlope.spec.ts.
 */
export function senSlope(blocks: readonly AgedBlock[]): number | null {
  const counts = new Map<number, number>()
  for (const { ageMonths } of blocks) counts.set(ageMonths, (counts.get(ageMonths) ?? 0) + 1)
  let pairs = (blocks.length * (blocks.length - 1)) / 2
  for (const count of counts.values()) pairs -= (count * (count - 1)) / 2
  if (pairs === 0) return null
  const ages = [...counts.keys()].sort((one, other) => one - other)
  const closest = Math.min(...ages.slice(1).map((age, i) => age - ages[i]!))
  const strengths = blocks.map(({ strengthMPa }) => strengthMPa)
  const steepest = (extreme(strengths, Math.max) - extreme(strengths, Math.min)) / closest
  if (steepest === 0) return 0
  const slopeAt = (place: number): number => {
    // The slope at a place is the largest m with no more than `place` slopes below it.
    let low = -steepest
    let high = steepest
    for (let round = 0; round < 1100; round++) {
      const middle = (low + high) / 2
      if (middle <= low || middle >= high) break
      if (pairsBelow(blocks, middle) <= place) low = middle
      else high = middle
    }
    return low === -steepest || pairsBelow(blocks, high) > place ? low : high
  }
  const middle = (pairs - 1) / 2
  const slope = (slopeAt(Math.floor(middle)) + slopeAt(Math.ceil(middle))) / 2
  return Math.abs(slope) < 1e-14 * steepest ? 0 : slope
}

const extreme = (values: readonly number[], of: (one: number, other: number) => number) =>
  values.reduce((found, value) => of(found, value))
