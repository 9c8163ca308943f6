import type { RandomStream } from './random.ts'

/**
 * A random chi-square number of so many whole degrees of freedom, by squeezing a cube of a normal number.
 *
 *   d = ν/2 − 1/3,  v = (1 + z/√(9d))³,  taken where ln u < z²/2 + d (1 − v + ln v):  2 d v;      z² for ν = 1
 *
 * Throws RangeError for degrees of freedom that are no whole number from 1 on.
 * Source: Marsaglia and Tsang, ACM Transactions on Mathematical Software 26 (2000) 363 (from memory).
 * Checked: tests/domain/numbers/chiSquareDraw.spec.ts against the distribution function.
 */
export function chiSquareDraw(df: number, random: RandomStream): number {
  if (!(Number.isSafeInteger(df) && df >= 1)) throw new RangeError('chiSquareDraw requires whole degrees of freedom')
  if (df === 1) return random.normal() ** 2
  const d = df / 2 - 1 / 3
  for (;;) {
    const z = random.normal()
    const root = 1 + z / Math.sqrt(9 * d)
    const v = root * root * root
    if (v <= 0) continue
    // 1 - unit() is above 0
    const u = 1 - random.unit()
    // The squeeze lies below the bound and spares its logarithms nearly always.
    if (u < 1 - 0.0331 * z * z * z * z || Math.log(u) < (z * z) / 2 + d * (1 - v + Math.log(v))) return 2 * d * v
  }
}
