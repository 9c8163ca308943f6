const golden = (3 - Math.sqrt(5)) / 2

/**
 * Place of the least value of a function with one valley between two points, in their unit, to `tolerance`.
 *
 * Parabolas where they help, golden section where they do not.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 5 (from memory).
 * Checked: tests/domain/numbers/goldenMinimum.spec.ts.
 */
export function minimumBetween(f: (x: number) => number, from: number, to: number, tolerance: number): number {
  let low = Math.min(from, to)
  let high = Math.max(from, to)
  let best = low + golden * (high - low)
  let second = best
  let third = best
  let fBest = f(best)
  let fSecond = fBest
  let fThird = fBest
  let step = 0
  let before = 0
  for (let round = 0; round < 200; round++) {
    const middle = (low + high) / 2
    const near = tolerance + 1e-9 * Math.abs(best)
    if (Math.abs(best - middle) <= 2 * near - (high - low) / 2) return best
    let parabolic = false
    if (Math.abs(before) > near) {
      const r = (best - second) * (fBest - fThird)
      let q = (best - third) * (fBest - fSecond)
      let p = (best - third) * q - (best - second) * r
      q = 2 * (q - r)
      if (q > 0) p = -p
      q = Math.abs(q)
      parabolic = Math.abs(p) < Math.abs(0.5 * q * before) && p > q * (low - best) && p < q * (high - best)
      if (parabolic) {
        before = step
        step = p / q
        if (best + step - low < 2 * near || high - best - step < 2 * near) step = best < middle ? near : -near
      }
    }
    if (!parabolic) {
      before = best < middle ? high - best : low - best
      step = golden * before
    }
    const x = best + (Math.abs(step) >= near ? step : step > 0 ? near : -near)
    const fx = f(x)
    if (fx <= fBest) {
      if (x < best) high = best
      else low = best
      third = second
      fThird = fSecond
      second = best
      fSecond = fBest
      best = x
      fBest = fx
    } else {
      if (x < best) low = x
      else high = x
      if (fx <= fSecond || second === best) {
        third = second
        fThird = fSecond
        second = x
        fSecond = fx
      } else if (fx <= fThird || third === best || third === second) {
        third = x
        fThird = fx
      }
    }
  }
  return best
}
