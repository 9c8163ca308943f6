import { nearestIndex } from '#domain/numbers/risingSearch.ts'

/** A curve's own value nearest to a time, so that a mark stands on the line; 0 for a curve without samples. */
export function forceNear(timeS: Float64Array, force: Float64Array, atS: number): number {
  return force[nearestIndex(timeS, atS)] ?? 0
}
