import { signedNumber } from '../../units/numbers.ts'
import type { Quantity } from '../../units/quantities.ts'

/** A force with its sign and hundredths. */
export function signedForce(forceN: number, { factor, unit }: Quantity): string {
  return `${signedNumber(forceN * factor, 2)}\u00a0${unit}`
}
