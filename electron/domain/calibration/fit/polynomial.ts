/**
 * Value of a polynomial, coefficient index = power.
 *
 *   p(x) = b₀ + b₁ x + b₂ x² + ...
 *
 * Horner's scheme. No coefficients give 0.
 * Source: definition. Checked: tests/domain/calibration/fit/polynomial.spec.ts.
 */
export function polynomialAt(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0)
}

/**
 * Slope of a polynomial, coefficient index = power, in its unit over the unit of x.
 *
 *   p′(x) = b₁ + 2 b₂ x + 3 b₃ x² + ...
 *
 * Source: definition. Checked: tests/domain/calibration/fit/polynomial.spec.ts.
 */
export function polynomialSlope(coefficients: readonly number[], x: number): number {
  return polynomialAt(
    coefficients.slice(1).map((coefficient, index) => coefficient * (index + 1)),
    x,
  )
}

/**
 * Whether a polynomial of degree 1 to 3 rises all the way or falls all the way between two points.
 *
 * Looks at the slope at both ends and where the slope itself is extreme (x = −b₂ / 3 b₃).
 * Source: definition. Checked: tests/domain/calibration/fit/polynomial.spec.ts.
 */
export function isMonotone(coefficients: readonly number[], from: number, to: number): boolean {
  const places = [from, to]
  // Below degree 3 the slope is extreme at an end; the turn is then no number or infinite, and lies between none.
  const turn = -coefficients[2]! / (3 * coefficients[3]!)
  if (turn > Math.min(from, to) && turn < Math.max(from, to)) places.push(turn)
  const slopes = places.map((x) => polynomialSlope(coefficients, x))
  return slopes.every((slope) => slope > 0) || slopes.every((slope) => slope < 0)
}
