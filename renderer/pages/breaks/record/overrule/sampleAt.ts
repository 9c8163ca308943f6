import type { ForceCurve } from '#contract/breaks/curve.ts'
import { nearestIndex } from '#domain/numbers/risingSearch.ts'

/** A sample that lies further from the time that was typed, s, is not the one that was meant. */
const farthestS = 1

/** The sample nearest to a time; null where none lies within a second of it, as beyond either end of the curve. */
export function sampleAt(
  { timeS, force, unit }: Pick<ForceCurve, 'timeS' | 'force' | 'unit'>,
  wantedS: number,
): { timeS: number; force: number; unit: ForceCurve['unit'] } | null {
  const index = nearestIndex(timeS, wantedS)
  if (index < 0 || Math.abs(timeS[index]! - wantedS) > farthestS) return null
  return { timeS: timeS[index]!, force: force[index]!, unit }
}
