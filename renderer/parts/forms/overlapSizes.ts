import type { Quantities, Quantity } from '#words/units/quantities.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'

type SizeTexts = Record<'overlapLengthMm' | 'overlapWidthMm' | 'areaMm2', string>

/** What a form says of its sides and area so far; null: nothing, or what cannot be read. */
export function sizesOf(texts: SizeTexts, { length, area }: Quantities) {
  const read = (text: string, quantity: Quantity) => {
    const answer = readQuantity(text, quantity, '')
    return 'error' in answer || answer.stored === null || answer.stored <= 0 ? null : answer.stored
  }
  return {
    lengthMm: read(texts.overlapLengthMm, length),
    widthMm: read(texts.overlapWidthMm, length),
    areaMm2: read(texts.areaMm2, area),
  }
}
