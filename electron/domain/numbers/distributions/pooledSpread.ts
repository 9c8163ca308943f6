import { stirlingError } from './stirling.ts'

/** Values of a density below e^−42 of its largest add nothing to a double. */
const negligible = 42
/**
 * Steps to one unit of the narrowest feature: the trapezoid rule on a Gaussian of SD σ errs by e^(−2π²σ²/h²), 1e−17 here.
 */
const stepsToWidth = 1.45
/** ln s lives in a strip of half-width π/4 in which the density stays bounded: its part in the step, as a curvature. */
const stripCurvature = 30

/** Where ν/2 (e^(2x) − 1 − 2x) reaches the negligible on the right of 0. */
function rightEnd(half: number): number {
  let x = Math.min(Math.sqrt(negligible / (2 * half)), 0.5 * Math.log1p(negligible / half))
  for (let round = 0; round < 60; round++) {
    const value = half * (Math.expm1(2 * x) - 2 * x) - negligible
    const next = x - value / (half * 2 * Math.expm1(2 * x))
    if (Math.abs(next - x) < 1e-6) return next
    x = next
  }
  return x
}

/**
 * Mean of f(S), where S = √(χ²_ν / ν) is a standard deviation with ν degrees of freedom in units of the true one.
 *
 *   E f(S) = ∫ f(eˣ) · 2 (ν/2)^(ν/2) / Γ(ν/2) · e^(νx − ν e^(2x)/2) dx      trapezoid rule over x = ln s
 *
 * `steepness`: how steep f is in ln s at its steepest, as of Φ(steepness · ln s); it sets the step. ν may be Infinity: f(1).
 * Throws RangeError for ν not positive.
 * Source: density of the chi distribution, NIST/SEMATECH e-Handbook 1.3.6.6.6; convergence of the trapezoid rule, Trefethen and
 * Weideman, SIAM Review 56 (2014). Checked: tests/domain/numbers/distributions/pooledSpread.spec.ts and noncentralT.spec.ts.
 */
export function meanOverSpread(df: number, steepness: number, f: (s: number) => number): number {
  if (!(df > 0)) throw new RangeError('A spread requires degrees of freedom above 0')
  if (df === Number.POSITIVE_INFINITY) return f(1)
  const half = df / 2
  const step = 1 / (stepsToWidth * Math.sqrt(2 * df + steepness * steepness + stripCurvature))
  const front = step * Math.sqrt((2 * half) / Math.PI) * Math.exp(-stirlingError(half))
  const right = Math.ceil(rightEnd(half) / step)
  let sum = 0
  const density = (x: number) => Math.exp(-half * (Math.expm1(2 * x) - 2 * x))
  for (let i = right; i > 0; i--) sum += density(i * step) * f(Math.exp(i * step))
  let below = f(1)
  for (let i = 1; ; i++) {
    const weight = density(-i * step)
    if (weight < 1e-19) break
    below += weight * f(Math.exp(-i * step))
  }
  return front * (sum + below)
}
