/** Level and slope of a curve at one of its points, from a straight line through it and its neighbours on one side. */
export type EdgeLevel = {
  level: number
  slope: number
  /** Standard error of the level. */
  error: number
  /** How many points the line goes through. */
  points: number
}

/** A line is taken through so many points, the more the better ... */
const lengths = [2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64]
/** ... over no longer than this, s ... */
const longestS = 1
/** ... as long as the mean square of its residuals is no more than so many of its SDs above that of noise. */
const misfitLimit = 2
/** They may be by chance; after so many lengths in a row no more are tried. */
const mostMisses = 2

/**
 * The straight line (least squares) through a point of a curve and its neighbours before or after it, as many of them as
 * lie on a line within the noise, and over `shortestS` at least. null: the point has no neighbour there.
 *
 *   s² = Σ residual² / (w − 2)                                      w points
 *   on a line     s² <= σ² (1 + 2 sqrt(2 / (w − 2)))                σ noise SD of a point; SD of s² for normal noise
 *   error = max(σ, s) sqrt( (4 w − 2) / (w (w + 1)) )               of the end of a line through points at equal distances
 *
 * Sums are taken about the point itself, so that neither a large time nor a large load does harm.
 * Checked: tests/domain/signal/events/drops/edgeLevel.spec.ts.
 */
export function edgeLevel(
  curve: { timeS: Float64Array; force: Float64Array },
  /** Points [0, count) are looked at. */
  count: number,
  at: number,
  side: 'before' | 'after',
  noise: number,
  shortestS: number,
): EdgeLevel | null {
  const { timeS, force } = curve
  const [t0, f0] = [timeS[at]!, force[at]!]
  const step = side === 'before' ? -1 : 1
  const available = side === 'before' ? at + 1 : count - at
  let found: EdgeLevel | null = null
  let longEnough = false
  let misses = 0
  let [n, st, sf, stt, sff, stf] = [0, 0, 0, 0, 0, 0]
  for (const length of lengths) {
    if (length > available) break
    for (; n < length; n++) {
      const t = timeS[at + step * n]! - t0
      const f = force[at + step * n]! - f0
      st += t
      sf += f
      stt += t * t
      sff += f * f
      stf += t * f
    }
    const spanS = Math.abs(timeS[at + step * (n - 1)]! - t0)
    const ctt = stt - (st * st) / n
    const ctf = stf - (st * sf) / n
    const degrees = n - 2
    const squares = Math.max(0, sff - (sf * sf) / n - (ctf * ctf) / ctt)
    const variance = degrees > 0 ? squares / degrees : 0
    const fits = variance <= noise * noise * (1 + misfitLimit * Math.sqrt(2 / degrees))
    if (longEnough && spanS > longestS) break
    if (longEnough && !fits) {
      misses += 1
      if (misses === mostMisses) break
      continue
    }
    misses = 0
    longEnough = spanS >= shortestS
    const slope = ctf / ctt
    found = {
      level: f0 + (sf - slope * st) / n,
      slope,
      error: Math.sqrt(Math.max(noise * noise, variance) * ((4 * n - 2) / (n * (n + 1)))),
      points: n,
    }
  }
  return found
}
