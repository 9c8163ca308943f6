/**
 * Root of a continuous function between two points where it has opposite signs, in the unit of the points.
 *
 * Brent's method: inverse quadratic interpolation where it helps, halving where it does not, so it always ends.
 * Ends when the bracket is 2⁻⁵² of the root wide, or narrower than `tolerance`.
 * Throws RangeError when the two ends have the same sign or a value is not a number.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4 (from memory).
 * Checked: tests/domain/numbers/bracketedRoot.spec.ts.
 */
export function bracketedRoot(f: (x: number) => number, from: number, to: number, tolerance = 0): number {
  let a = from
  let b = to
  let fa = f(a)
  let fb = f(b)
  if (fa === 0) return a
  if (fb === 0) return b
  if (!(fa < 0 !== fb < 0) || Number.isNaN(fa) || Number.isNaN(fb))
    throw new RangeError('bracketedRoot requires opposite signs at the two ends')
  let c = a
  let fc = fa
  let step = b - a
  let stepBefore = step
  for (let round = 0; round < 500; round++) {
    if (fb < 0 === fc < 0) {
      c = a
      fc = fa
      step = b - a
      stepBefore = step
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b
      b = c
      c = a
      fa = fb
      fb = fc
      fc = fa
    }
    const narrow = Number.EPSILON * Math.abs(b) + 0.5 * tolerance
    const half = 0.5 * (c - b)
    if (Math.abs(half) <= narrow || fb === 0) return b
    if (Math.abs(stepBefore) >= narrow && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa
      let p: number
      let q: number
      if (a === c) {
        p = 2 * half * s
        q = 1 - s
      } else {
        const u = fa / fc
        const r = fb / fc
        p = s * (2 * half * u * (u - r) - (b - a) * (r - 1))
        q = (u - 1) * (r - 1) * (s - 1)
      }
      if (p > 0) q = -q
      else p = -p
      if (2 * p < Math.min(3 * half * q - Math.abs(narrow * q), Math.abs(stepBefore * q))) {
        stepBefore = step
        step = p / q
      } else {
        step = half
        stepBefore = half
      }
    } else {
      step = half
      stepBefore = half
    }
    a = b
    fa = fb
    b += Math.abs(step) > narrow ? step : Math.sign(half) * Math.max(narrow, Number.MIN_VALUE)
    fb = f(b)
  }
  return b
}
