/** Level and slope of a curve at one of its points, from a straight line through the points on one side of it. */
export type EdgeLevels = {
  level: Float64Array
  slope: Float64Array
  /** Standard error of the level. */
  error: Float64Array
  /** How many points the line goes through. */
  points: Float64Array
}

/** A line is taken through so many points, the more the better ... */
const lengths = [2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64]
/** ... over no longer than this, s ... */
const longestS = 1
/** ... as long as its residuals are no larger than noise makes them: this many SDs of their mean square. */
const misfitLimit = 2

/**
 * For each point of a curve the straight line (least squares) through it and its neighbours on one side, as many of them as
 * lie on a line within the noise, and `shortestS` at least.
 *
 *   error = max(σ, s) sqrt( (4 w − 2) / (w (w + 1)) )      w points (the error of an end of a line through w points
 *                                                          of equal distance), s SD of the residuals, σ noise of a point
 *
 * Sums are taken about the point itself. Checked: tests/domain/signal/events/edgeLevels.spec.ts.
 */
export function edgeLevels(
  curve: { timeS: Float64Array; force: Float64Array },
  count: number,
  side: 'before' | 'after',
  noise: number,
  shortestS: number,
): EdgeLevels {
  const { timeS, force } = curve
  const levels = {
    level: new Float64Array(count),
    slope: new Float64Array(count),
    error: new Float64Array(count),
    points: new Float64Array(count),
  }
  const step = side === 'before' ? -1 : 1
  for (let i = 0; i < count; i++) {
    const available = side === 'before' ? i + 1 : count - i
    let [n, st, sf, stt, sff, stf] = [0, 0, 0, 0, 0, 0]
    levels.level[i] = force[i]!
    levels.error[i] = Number.POSITIVE_INFINITY
    for (const length of lengths) {
      if (length > available) break
      for (; n < length; n++) {
        const at = i + step * n
        const t = timeS[at]! - timeS[i]!
        const f = force[at]! - force[i]!
        st += t
        sf += f
        stt += t * t
        sff += f * f
        stf += t * f
      }
      const spanS = Math.abs(timeS[i + step * (n - 1)]! - timeS[i]!)
      const ctt = stt - (st * st) / n
      const ctf = stf - (st * sf) / n
      const squares = Math.max(0, sff - (sf * sf) / n - (ctf * ctf) / ctt)
      const degrees = n - 2
      const variance = degrees > 0 ? squares / degrees : 0
      const needed = n < 3 || spanS < shortestS
      if (!needed) {
        if (spanS > longestS) break
        if (variance > noise * noise * (1 + misfitLimit * Math.sqrt(2 / degrees))) break
      }
      const slope = ctf / ctt
      levels.slope[i] = slope
      levels.points[i] = n
      levels.level[i] = force[i]! + (sf - slope * st) / n
      levels.error[i] = Math.sqrt(Math.max(noise * noise, variance) * ((4 * n - 2) / (n * (n + 1))))
    }
  }
  return levels
}
