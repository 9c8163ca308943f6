import { dot } from '../../numbers/matrices/dot.ts'
import { householderLeastSquares } from '../../numbers/matrices/householder.ts'

export type Degree = 1 | 2 | 3

/** A fit about its centre: y = Σ c_k u^power_k, u = (x − centre) / scale. Covariance null without degrees of freedom. */
export type CentredFit = {
  readonly centre: number
  readonly scale: number
  readonly powers: readonly number[]
  readonly coefficients: readonly number[]
  readonly covariance: readonly (readonly number[])[] | null
  readonly degreesOfFreedom: number
}

export type PolynomialFit = {
  readonly degree: Degree
  readonly throughZero: boolean
  /** Index = power of x. Through zero: index 0 is 0, with standard error and covariance 0. */
  readonly coefficients: readonly number[]
  readonly standardErrors: readonly (number | null)[]
  readonly covariance: readonly (readonly number[])[] | null
  /** y minus fitted y, in the order of the data. */
  readonly residuals: readonly number[]
  readonly residualSD: number | null
  readonly degreesOfFreedom: number
  readonly rSquared: number
  readonly centred: CentredFit
}

function binomial(n: number, k: number): number {
  let value = 1
  for (let i = 0; i < k; i++) value = (value * (n - i)) / (i + 1)
  return value
}

/** Rows: powers of x; columns: the powers of u that were fitted. Multiplies centred coefficients into plain ones. */
function backToPlain(powers: readonly number[], degree: number, centre: number, scale: number): number[][] {
  return Array.from({ length: degree + 1 }, (_, j) =>
    powers.map((k) => (j > k ? 0 : (binomial(k, j) * (-centre) ** (k - j)) / scale ** k)),
  )
}

const timesTransposed = (rows: readonly (readonly number[])[], factor: number) =>
  rows.map((a) => rows.map((b) => factor * dot(a, b)))

/**
 * Least-squares polynomial of degree 1 to 3, with a constant or through zero, with standard errors in the units of y and x.
 *
 *   y = b₀ + b₁ x + ... + b_d x^d,  s² = Σ eᵢ² / ν,  ν = n − p,  Cov(b) = s² (AᵀA)⁻¹,  R² = 1 − Σ eᵢ² / Σ (yᵢ − ȳ)²
 *
 * n points, p coefficients found, e residual. Through zero b₀ is set to 0 and R² takes Σ yᵢ² below the line, as R's lm does.
 * x is centred and scaled to −1..1 first (through zero: scaled only), so that counts with a large zero cost no digits.
 * With ν = 0 there is no standard error: null.
 * Throws RangeError for a number that is not finite, x and y of unlike length, or fewer distinct x than coefficients.
 * Source: NIST/SEMATECH e-Handbook 4.4.3.1 and 4.6.1. Checked: tests/domain/calibration/fit/polynomialFit.spec.ts
 * against NIST StRD Pontius and NoInt1, JCGM 100 H.3 and exact rational arithmetic.
 */
export function polynomialFit(
  x: readonly number[],
  y: readonly number[],
  degree: Degree,
  throughZero = false,
): PolynomialFit {
  if (x.length !== y.length) throw new RangeError('polynomialFit requires as many x as y')
  if (!x.every(Number.isFinite) || !y.every(Number.isFinite)) throw new RangeError('polynomialFit requires finite data')
  const powers = Array.from({ length: degree + 1 }, (_, k) => k).slice(throughZero ? 1 : 0)
  const distinct = new Set(throughZero ? x.filter((value) => value !== 0) : x).size
  if (distinct < powers.length) throw new RangeError('polynomialFit requires as many distinct x as coefficients')

  const centre = throughZero ? 0 : x.reduce((sum, value) => sum + value, 0) / x.length
  const scale = x.reduce((widest, value) => Math.max(widest, Math.abs(value - centre)), 0)
  const u = x.map((value) => (value - centre) / scale)
  const columns = powers.map((power) => Float64Array.from(u, (value) => value ** power))
  const { solution, inverseR } = householderLeastSquares(columns, y)

  const residuals = y.map((value, i) => solution.reduce((rest, c, k) => rest - c * columns[k]![i]!, value))
  const residualSquares = residuals.reduce((sum, e) => sum + e * e, 0)
  const mean = throughZero ? 0 : y.reduce((sum, value) => sum + value, 0) / y.length
  const totalSquares = y.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  const degreesOfFreedom = x.length - powers.length
  const variance = degreesOfFreedom > 0 ? residualSquares / degreesOfFreedom : null

  const plain = backToPlain(powers, degree, centre, scale)
  const plainInverse = plain.map((row) =>
    powers.map((_, column) => row.reduce((sum, value, k) => sum + value * inverseR[k]![column]!, 0)),
  )
  const covariance = variance === null ? null : timesTransposed(plainInverse, variance)
  return {
    degree,
    throughZero,
    coefficients: plain.map((row) => dot(row, solution)),
    standardErrors: plain.map((_, j) => (covariance === null ? null : Math.sqrt(covariance[j]![j]!))),
    covariance,
    residuals,
    residualSD: variance === null ? null : Math.sqrt(variance),
    degreesOfFreedom,
    rSquared: totalSquares > 0 ? 1 - residualSquares / totalSquares : 1,
    centred: {
      centre,
      scale,
      powers,
      coefficients: solution,
      covariance: variance === null ? null : timesTransposed(inverseR, variance),
      degreesOfFreedom,
    },
  }
}
