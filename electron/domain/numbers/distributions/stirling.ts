const halfLogTwoPi = 0.9189385332046727

/**
 * Error of Stirling's formula for ln Γ(z), z > 0, without unit.
 *
 *   δ(z) = ln Γ(z) − [ (z − ½) ln z − z + ½ ln 2π ]
 *
 * Asymptotic series from z = 12 on; smaller z climbs there by δ(z) = δ(z + 1) + (z + ½) ln(1 + 1/z) − 1. Kept apart from
 * ln Γ because differences of δ stay exact where differences of large ln Γ do not.
 * Throws RangeError for z that is not a positive finite number.
 * Source: NIST Digital Library of Mathematical Functions 5.11.1. Checked: tests/domain/numbers/distributions/stirling.spec.ts.
 */
export function stirlingError(z: number): number {
  if (!(z > 0) || !Number.isFinite(z)) throw new RangeError('stirlingError requires a positive finite number')
  let climbed = 0
  let argument = z
  while (argument < 12) {
    climbed += (argument + 0.5) * Math.log1p(1 / argument) - 1
    argument += 1
  }
  const s = 1 / (argument * argument)
  const series =
    (1 / 12 - s * (1 / 360 - s * (1 / 1260 - s * (1 / 1680 - s * (1 / 1188 - s * (691 / 360360 - s * (1 / 156))))))) /
    argument
  return climbed + series
}

/**
 * Natural logarithm of the gamma function, z > 0.
 *
 *   ln Γ(z) = (z − ½) ln z − z + ½ ln 2π + δ(z)
 *
 * Throws RangeError for z that is not a positive finite number.
 * Source: NIST Digital Library of Mathematical Functions 5.11.1. Checked: tests/domain/numbers/distributions/stirling.spec.ts.
 */
export function logGamma(z: number): number {
  const error = stirlingError(z)
  return (z - 0.5) * Math.log(z) - z + halfLogTwoPi + error
}

/**
 * ln q − (q − 1) without loss of digits near q = 1, for q > 0; `excess` is q − 1, given apart with all its digits.
 *
 *   with r = e / (2 + e), e = q − 1:  ln q − e = 2 (r³/3 + r⁵/5 + ...) − e²/(2 + e)
 *
 * Throws RangeError for q of 0 or less.
 * Source: the series of the inverse hyperbolic tangent. Checked: tests/domain/numbers/distributions/stirling.spec.ts.
 */
export function logMinusExcess(q: number, excess: number): number {
  if (!(q > 0)) throw new RangeError('logMinusExcess requires a number above 0')
  if (Math.abs(excess) > 0.5) return Math.log(q) - excess
  const r = excess / (2 + excess)
  const square = r * r
  let power = r * square
  let sum = 0
  for (let k = 3; k < 80; k += 2) {
    const term = power / k
    sum += term
    if (Math.abs(term) <= 1e-18 * Math.abs(sum)) break
    power *= square
  }
  return 2 * sum - (excess * excess) / (2 + excess)
}
