import type { Tails } from './incompleteBeta.ts'
import { logMinusExcess, stirlingError } from './stirling.ts'

/** x^a e^(−x) / Γ(a), written about its largest value so that a large a costs no digits. */
function front(a: number, x: number): number {
  return Math.exp(a * logMinusExcess(x / a, (x - a) / a) - stirlingError(a)) * Math.sqrt(a / (2 * Math.PI))
}

function seriesForLower(a: number, x: number): number {
  let term = 1 / a
  let sum = term
  for (let n = 1; n <= 1_000_000; n++) {
    term *= x / (a + n)
    sum += term
    if (term < sum * 1e-17) return sum
  }
  throw unsettled()
}

const unsettled = () => new RangeError('regularizedGamma did not settle: a is too large')

function fractionForUpper(a: number, x: number): number {
  let b = x + 1 - a
  let c = 1e300
  let d = 1 / b
  let fraction = d
  for (let n = 1; n <= 1_000_000; n++) {
    const numerator = -n * (n - a)
    b += 2
    d = 1 / (numerator * d + b)
    c = b + numerator / c
    const factor = d * c
    fraction *= factor
    if (Math.abs(factor - 1) < 1e-16) return fraction
  }
  throw unsettled()
}

/**
 * Regularized incomplete gamma function, both tails, without unit.
 *
 *   lower = P(a, x) = 1/Γ(a) ∫₀ˣ t^(a−1) e^(−t) dt      upper = 1 − lower
 *
 * Throws RangeError for a not positive and finite or x negative or not a number.
 * Source: NIST Digital Library of Mathematical Functions 8.7.1 (series) and 8.9.2 (continued fraction).
 * Checked: tests/domain/numbers/distributions/incompleteGamma.spec.ts against scipy.special.gammainc and gammaincc.
 */
export function regularizedGamma(a: number, x: number): Tails {
  if (!(a > 0 && Number.isFinite(a))) throw new RangeError('regularizedGamma requires a positive and finite')
  if (!(x >= 0)) throw new RangeError('regularizedGamma requires x of 0 or more')
  if (x === 0) return { lower: 0, upper: 1 }
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 }
  if (x < a + 1) {
    const lower = front(a, x) * seriesForLower(a, x)
    return { lower, upper: 1 - lower }
  }
  const first = front(a, x)
  // So far out that no digit is left; the fraction, of numbers that adding one does not change, may never settle there
  const upper = first === 0 ? 0 : first * fractionForUpper(a, x)
  return { lower: 1 - upper, upper }
}
