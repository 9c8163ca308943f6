/** Points [from, i] and [j, to) that a line each fits best: where a load falls from one to the other. */
export type Split = { i: number; j: number }

/** Points that the fall may leave out between the lines: it may last, or fall into a mean. */
const mostBetween = 2
/** A point that is left out counts as much as one so many variances from its line. */
const leftOutSquares = 6

/**
 * Where points fall from one straight line to another: the split of [from, to) with the least squares about both lines for
 * the points that they pass, searched from `i − (j − i)` on to `j`, up to two points left out between them.
 *
 *   score = Σ residual² / (n − 4)      n points on both lines
 *
 * Checked: tests/domain/signal/events/stepFit.spec.ts.
 */
export function bestSplit(
  curve: { timeS: Float64Array; force: Float64Array },
  around: { from: number; i: number; j: number; to: number },
  noise: number,
): Split {
  const { from, i, j, to } = around
  const reach = 3 + (j - i)
  const first = Math.max(from + 1, i - reach)
  const last = Math.min(to - 3, j + reach - 1)
  const tried: (Split & { squares: number })[] = []
  let variance = Number.POSITIVE_INFINITY
  for (let high = first; high <= last; high++) {
    const before = squaresAboutLine(curve, from, high + 1)
    for (let low = high + 1; low <= high + 1 + mostBetween && low <= to - 2; low++) {
      const squares = before + squaresAboutLine(curve, low, to)
      tried.push({ i: high, j: low, squares })
      variance = Math.min(variance, squares / Math.max(1, high - from + 1 + to - low - 4))
    }
  }
  let best: Split = { i, j }
  let least = Number.POSITIVE_INFINITY
  const leftOut = leftOutSquares * Math.max(noise * noise, variance)
  for (const split of tried) {
    const score = split.squares + leftOut * (split.j - split.i - 1)
    if (score >= least) continue
    least = score
    best = { i: split.i, j: split.j }
  }
  return best
}

/** Sum of squares about the line by least squares through the points [from, to). */
function squaresAboutLine(
  { timeS, force }: { timeS: Float64Array; force: Float64Array },
  from: number,
  to: number,
): number {
  const n = to - from
  let [st, sf, stt, sff, stf] = [0, 0, 0, 0, 0]
  for (let k = from; k < to; k++) {
    const t = timeS[k]! - timeS[from]!
    const f = force[k]! - force[from]!
    st += t
    sf += f
    stt += t * t
    sff += f * f
    stf += t * f
  }
  const ctt = stt - (st * st) / n
  const ctf = stf - (st * sf) / n
  return Math.max(0, sff - (sf * sf) / n - (ctt > 0 ? (ctf * ctf) / ctt : 0))
}
