import { normalProbability } from './normal.ts'

const perUnit = 16
const end = 27
const terms = 11
const densityFront = 1 / Math.sqrt(2 * Math.PI)

/** Φ at the multiples of 1/16 from −27 to 27. */
let nodes: Float64Array | null = null

/** Φ at the multiples of 1/16 from −27 to 27; the value of x = i/16 stands at i + 432. Made at the first call. */
export function normalNodes(): Float64Array {
  nodes ??= Float64Array.from({ length: 2 * end * perUnit + 1 }, (_, i) => normalProbability(i / perUnit - end))
  return nodes
}

/**
 * Probability that a standard normal variable is at most z, for integrals that ask for millions of them.
 *
 *   Φ(x + d) = Φ(x) + φ(x) Σ (−1)ⁿ Heₙ(x) dⁿ⁺¹/(n + 1)!      x the nearest sixteenth, Hermite polynomials by their recurrence
 *
 * Source: Taylor series; NIST Digital Library of Mathematical Functions 18.9.1 (recurrence).
 * Checked: tests/domain/numbers/distributions/normalTable.spec.ts against normalProbability.
 */
export function normalFromTable(z: number): number {
  if (z >= 9) return 1
  if (z <= -end + 1) return 0
  const table = normalNodes()
  const at = Math.round(z * perUnit)
  const x = at / perUnit
  const d = z - x
  let hermite = 1
  let before = 0
  let power = d
  let sum = 0
  for (let n = 0; n < terms; n++) {
    sum += hermite * power
    const next = x * hermite - n * before
    before = hermite
    hermite = next
    power *= -d / (n + 2)
  }
  return table[at + end * perUnit]! + densityFront * Math.exp(-0.5 * x * x) * sum
}
