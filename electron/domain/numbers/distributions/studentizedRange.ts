import { bracketedRoot } from '../bracketedRoot.ts'
import { normalNodes } from './normalTable.ts'
import { meanOverSpread } from './pooledSpread.ts'

// The range of k normal variables, as a table of its upper tail at the multiples of 1/16, and values between by polynomials.
const perUnit = 16
const tableEnd = 24
const points = 10
const middle = 27 * perUnit
/** Multiples of 1/16 between the abscissas of the trapezoid rule, which is exact for functions as smooth as these. */
const stride = 3

const tables = new Map<number, Float64Array>()

/** P(range > w) at w = j/16: ∫ k φ(z) Φ(z)^(k−1) [1 − (1 − Φ(z − w)/Φ(z))^(k−1)] dz. */
function tableOf(k: number): Float64Array {
  const known = tables.get(k)
  if (known !== undefined) return known
  const below = normalNodes()
  const from = -9 * perUnit
  const to = 20 * perUnit
  const weights: number[] = []
  for (let i = from; i <= to; i += stride) {
    const z = i / perUnit
    const front = ((k * stride) / perUnit / Math.sqrt(2 * Math.PI)) * Math.exp(-0.5 * z * z)
    weights.push(front * below[i + middle]! ** (k - 1))
  }
  const table = Float64Array.from({ length: tableEnd * perUnit + 1 }, (_, w) => {
    let sum = 0
    weights.forEach((weight, n) => {
      if (weight === 0) return
      const i = from + n * stride
      const share = (below[i - w + middle] ?? 0) / below[i + middle]!
      sum += weight * -Math.expm1((k - 1) * Math.log1p(-Math.min(share, 1)))
    })
    return Math.min(sum, 1)
  })
  tables.set(k, table)
  return table
}

const lagrange = (() => {
  const weights = new Float64Array(points)
  for (let j = 0; j < points; j++) {
    let product = 1
    for (let m = 0; m < points; m++) if (m !== j) product *= j - m
    weights[j] = 1 / product
  }
  return weights
})()

function rangeUpper(table: Float64Array, w: number): number {
  const place = w * perUnit
  if (place >= table.length - points) return 0
  const first = Math.max(0, Math.floor(place) - points / 2 + 1)
  let above = 0
  let under = 0
  for (let j = 0; j < points; j++) {
    const distance = place - (first + j)
    if (distance === 0) return table[first + j]!
    const weight = lagrange[j]! / distance
    above += weight * table[first + j]!
    under += weight
  }
  return Math.max(above / under, 0)
}

function requireGroups(k: number): void {
  if (!(Number.isSafeInteger(k) && k >= 2)) throw new RangeError('A studentized range requires two groups or more')
}

/**
 * Probability that the range of k means, divided by their pooled standard error with ν degrees of freedom, is above q.
 *
 *   E_S P(range of k normal variables > q S)
 *
 * ν may be Infinity. Throws RangeError for fewer than two groups, ν not positive or q not a number.
 * Source: Tukey (1953), by the definition. Checked: tests/domain/numbers/distributions/studentizedRange.spec.ts.
 */
export function studentizedRangeUpperTail(q: number, k: number, df: number): number {
  requireGroups(k)
  if (Number.isNaN(q)) throw new RangeError('A studentized range requires a number')
  if (q <= 0) return 1
  const table = tableOf(k)
  return Math.min(
    meanOverSpread(df, 8, (s) => rangeUpper(table, q * s)),
    1,
  )
}

/**
 * Value that the studentized range exceeds with probability `upperTail`, 0 < upperTail < 1; `near`: about where it is, which saves time.
 * Throws RangeError as studentizedRangeUpperTail. Source: its inverse.
 * Checked: tests/domain/numbers/distributions/studentizedRange.spec.ts against scipy and q = √2 t for two groups.
 */
export function studentizedRangeQuantile(upperTail: number, k: number, df: number, near?: number): number {
  if (!(upperTail > 0 && upperTail < 1)) throw new RangeError('A quantile requires a probability between 0 and 1')
  const excess = (q: number) => 1 - studentizedRangeUpperTail(q, k, df) / upperTail
  if (near !== undefined && excess(0.995 * near) < 0 && excess(1.005 * near) > 0)
    return bracketedRoot(excess, 0.995 * near, 1.005 * near, 1e-13)
  let high = 4
  while (excess(high) < 0) high *= 2
  return bracketedRoot(excess, high === 4 ? 0 : high / 2, high, 1e-13)
}
