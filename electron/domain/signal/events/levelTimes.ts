/**
 * When a curve first reaches each of some levels, in the unit of its times; NaN where it does not.
 *
 * Means are joined by straight lines; a level at or below the first mean is reached there. `levels` rise.
 * Checked: tests/domain/signal/events/levelTimes.spec.ts.
 */
export function levelTimes(timeS: Float64Array, force: Float64Array, levels: readonly number[]): Float64Array {
  const reached = new Float64Array(levels.length).fill(Number.NaN)
  let next = 0
  for (let i = 0; i < force.length && next < levels.length; i++)
    while (next < levels.length && force[i]! >= levels[next]!) {
      if (i === 0) reached[next] = timeS[0]!
      else {
        // All earlier means lie below the level, so the line to this one rises through it.
        const share = (levels[next]! - force[i - 1]!) / (force[i]! - force[i - 1]!)
        reached[next] = timeS[i - 1]! + share * (timeS[i]! - timeS[i - 1]!)
      }
      next += 1
    }
  return reached
}
