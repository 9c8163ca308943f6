import { logMinusExcess, stirlingError } from './stirling.ts'

/** Both tails of a distribution function, so that the small one keeps its digits. */
export type Tails = { readonly lower: number; readonly upper: number }

const tiny = 1e-300

/** x^a y^b / B(a, b), written about its largest value so that large a and b cost no digits. */
function beforeFraction(a: number, b: number, x: number, y: number): number {
  const n = a + b
  // x n − a and y n − b are the same number with opposite signs; the smaller of x, y gives it with fewer lost digits.
  const excess = x < y ? x * n - a : b - y * n
  const exponent = a * logMinusExcess((x * n) / a, excess / a) + b * logMinusExcess((y * n) / b, -excess / b)
  return (
    Math.exp(exponent + stirlingError(n) - stirlingError(a) - stirlingError(b)) * Math.sqrt((a * b) / (2 * Math.PI * n))
  )
}

/** The continued fraction of the incomplete beta function by Lentz's method. */
function continuedFraction(a: number, b: number, x: number): number {
  const notZero = (value: number) => (Math.abs(value) < tiny ? tiny : value)
  let c = 1
  let d = 1 / notZero(1 - ((a + b) * x) / (a + 1))
  let fraction = d
  for (let m = 1; m <= 100_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    d = 1 / notZero(1 + even * d)
    c = notZero(1 + even / c)
    fraction *= d * c
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    d = 1 / notZero(1 + odd * d)
    c = notZero(1 + odd / c)
    const factor = d * c
    fraction *= factor
    if (Math.abs(factor - 1) < 1e-16) return fraction
  }
  throw new RangeError('regularizedBeta did not settle: a and b are too large')
}

/**
 * Regularized incomplete beta function, both tails, without unit.
 *
 *   lower = I_x(a, b) = 1/B(a, b) ∫₀ˣ t^(a−1) (1 − t)^(b−1) dt      upper = 1 − lower      y = 1 − x, given apart
 *
 * y is a parameter of its own because 1 − x has no digits left where x is near 1.
 * Throws RangeError for a or b not positive and finite, or x or y outside 0..1.
 * Source: NIST Digital Library of Mathematical Functions 8.17.22 (continued fraction).
 * Checked: tests/domain/numbers/distributions/incompleteBeta.spec.ts against scipy.special.betainc.
 */
export function regularizedBeta(a: number, b: number, x: number, y: number): Tails {
  if (!(a > 0 && b > 0 && Number.isFinite(a) && Number.isFinite(b)))
    throw new RangeError('regularizedBeta requires a and b positive and finite')
  if (!(x >= 0 && x <= 1 && y >= 0 && y <= 1)) throw new RangeError('regularizedBeta requires x and y from 0 to 1')
  if (x === 0) return { lower: 0, upper: 1 }
  if (y === 0) return { lower: 1, upper: 0 }
  const front = beforeFraction(a, b, x, y)
  if (x <= (a + 1) / (a + b + 2)) {
    const lower = (front * continuedFraction(a, b, x)) / a
    return { lower, upper: 1 - lower }
  }
  const upper = (front * continuedFraction(b, a, y)) / b
  return { lower: 1 - upper, upper }
}
