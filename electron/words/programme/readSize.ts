import { readTypedNumber } from '#domain/units/typedNumber.ts'
import type { Quantity } from '../units/quantities.ts'
import { type ReadQuantity, readQuantity } from '../units/typedQuantity.ts'

/**
 * A side of a block as calipers or a person type it, in mm: a decimal comma is always one, as no block is thousands of anything
 * long; a unit behind the number wins over that of the field.
 */
export function readSize(text: string, length: Quantity): ReadQuantity {
  const plain = readTypedNumber(text).kind === 'ambiguous' ? text.replace(',', '.') : text
  const read = readQuantity(plain, length, 'a length, as 30.2 or 1 3/16')
  if ('error' in read || read.stored === null || read.stored > 0) return read
  return { error: 'A side must be longer than nothing.' }
}
