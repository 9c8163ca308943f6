/** Points [from, i] before a fall and [j, to) after it; what lies between belongs to the fall. */
export type Step = { from: number; i: number; j: number; to: number }

type Points = { timeS: Float64Array; force: Float64Array }

/** So many points may lie between the lines however far apart they are: a fall may lie within a mean and reach into two. */
const mostBetween = 2
/** A point that is left out counts as much as one so many variances from its line, and this share of the fall at least. */
const leftOutSquares = 6
const leftOutShare = 0.03
/** A bend is looked for so many points away from the fall. */
const bendReach = 8

/** It is looked for so many points beyond where it was seen. */
const reach = 3

/**
 * Where a load falls from one straight line to another: the step with the least squares about both lines by least squares.
 * What lies between them is left out, each point at a price: two points, or as many as a fall of `longestS` goes through.
 *
 *   score = Σ residual² + max(6 v, (0.03 drop)²) (j − i − 1)     v noise variance, or the least Σ residual² / (n − 4) where
 *                                                              that is larger
 *
 * Checked: tests/domain/signal/events/drops/stepFit.spec.ts.
 */
export function bestStep(curve: Points, seen: Step, drop: number, noise: number, longestS: number): Step {
  const { timeS } = curve
  const { from, to } = seen
  const first = Math.max(from + 1, seen.i - reach - (seen.j - seen.i))
  const last = Math.min(to - 3, seen.j + reach + (seen.j - seen.i) - 1)
  const tried: { step: Step; squares: number }[] = []
  let variance = Number.POSITIVE_INFINITY
  // About the line after the fall, for every place where it may begin.
  const after = new Map<number, number>()
  function squaresAfter(j: number): number {
    const squares = after.get(j) ?? squaresAboutLine(curve, j, to)
    after.set(j, squares)
    return squares
  }
  for (let i = first; i <= last; i++) {
    const before = squaresAboutLine(curve, from, i + 1)
    const ended = (j: number) => j > to - 2 || (j > i + 1 + mostBetween && timeS[j]! - timeS[i]! > longestS)
    for (let j = i + 1; !ended(j); j++) {
      const squares = before + squaresAfter(j)
      tried.push({ step: { from, i, j, to }, squares })
      variance = Math.min(variance, squares / Math.max(1, i - from + 1 + to - j - 4))
    }
  }
  let best = seen
  let least = Number.POSITIVE_INFINITY
  const leftOut = Math.max(leftOutSquares * Math.max(noise * noise, variance), (leftOutShare * drop) ** 2)
  for (const { step, squares } of tried) {
    const score = squares + leftOut * (step.j - step.i - 1)
    if (score >= least) continue
    least = score
    best = step
  }
  return best
}

/**
 * How much better two separate lines fit the points of a step than two that meet, as a load does that only bends, in
 * noise variances.
 *
 *   (min Σ r² of lines that meet at a point up to 8 points away − Σ r² of the step) / max(σ², Σ r² of the step / (n − 4))
 *
 * Checked: tests/domain/signal/events/drops/stepFit.spec.ts.
 */
export function stepOverBend(curve: Points, step: Step, noise: number): number {
  const { from, i, j, to } = step
  const squares = squaresAboutLine(curve, from, i + 1) + squaresAboutLine(curve, j, to)
  const degrees = Math.max(1, i - from + 1 + to - j - 4)
  let bent = Number.POSITIVE_INFINITY
  for (let knot = Math.max(from + 1, i - bendReach); knot <= Math.min(to - 2, j + bendReach); knot++)
    bent = Math.min(bent, squaresAboutBend(curve, step, knot))
  return (bent - squares) / Math.max(noise * noise, squares / degrees)
}

/** Sum of squares about the line by least squares through the points [from, to). */
function squaresAboutLine({ timeS, force }: Points, from: number, to: number): number {
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

/**
 * Sum of squares about the two lines by least squares that meet at the time of a point, through the points of a step:
 * f = m + a (min(0, x) − its mean) + b (max(0, x) − its mean), x the time from there.
 */
function squaresAboutBend({ timeS, force }: Points, { from, i, j, to }: Step, knot: number): number {
  const knotS = timeS[knot]!
  const f0 = force[i]!
  const n = i - from + 1 + to - j
  let [sx, sz, sf, sxx, szz, sxf, szf, sff] = [0, 0, 0, 0, 0, 0, 0, 0]
  for (let k = from; k < to; k++) {
    if (k > i && k < j) continue
    const t = timeS[k]! - knotS
    const x = Math.min(0, t)
    const z = Math.max(0, t)
    const f = force[k]! - f0
    sx += x
    sz += z
    sf += f
    sxx += x * x
    szz += z * z
    sxf += x * f
    szf += z * f
    sff += f * f
  }
  const cxx = sxx - (sx * sx) / n
  const czz = szz - (sz * sz) / n
  // x z is 0 everywhere.
  const cxz = -(sx * sz) / n
  const cxf = sxf - (sx * sf) / n
  const czf = szf - (sz * sf) / n
  const determinant = cxx * czz - cxz * cxz
  const a = (cxf * czz - czf * cxz) / determinant
  const b = (czf * cxx - cxf * cxz) / determinant
  return Math.max(0, sff - (sf * sf) / n - a * cxf - b * czf)
}
