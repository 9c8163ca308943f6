import type { TroubleMessage } from '#contract/errors.ts'
import type { Quantities, Quantity } from './quantities.ts'

/** How the units of stored values are written in sentences that are made where nobody knows the units of the reader. */
const quantityOf = {
  N: 'force',
  kg: 'mass',
  mm: 'length',
  mm2: 'area',
  MPa: 'strength',
  '°C': 'temperature',
  m: 'height',
  'm/s2': 'acceleration',
  'kg/m3': 'density',
} as const satisfies Record<string, keyof Quantities>

const quantity =
  /(["“][^"”]*["”])|(?<![\w.,-])(-?\d[\d,]*(?:\.\d+)?(?:e-?\d+)?) (N|kg\/m3|kg|mm2|mm|MPa|°C|m\/s2|m)(?![\w/²³])/g

/**
 * A sentence about stored values in the units of its reader: "981.25 N" is "220.6 lbf" for who reads US units. What stands in
 * quotes is somebody's own name for a thing and stays as it is.
 */
export function sentenceIn(sentence: string, quantities: Quantities): string {
  return rewritten(sentence, quantities, (stored, { text }) => text(stored))
}

/** The same with all figures, for sentences in which two values differ by little. */
export function exactSentenceIn(sentence: string, quantities: Quantities): string {
  return rewritten(
    sentence,
    quantities,
    (stored, { factor, zeroAt = 0, unit }) => `${Number((stored * factor + zeroAt).toPrecision(15))}\u00a0${unit}`,
  )
}

function rewritten(sentence: string, quantities: Quantities, write: (stored: number, as: Quantity) => string): string {
  if (quantities.system === 'SI') return sentence
  return sentence.replace(quantity, (all, quoted: string | undefined, number: string, unit: keyof typeof quantityOf) =>
    quoted === undefined ? write(Number(number.replaceAll(',', '')), quantities[quantityOf[unit]]) : all,
  )
}

/** A trouble, its sentences in the units of its reader. */
export function troubleIn({ code, message, hint }: TroubleMessage, quantities: Quantities): TroubleMessage {
  return { code, message: sentenceIn(message, quantities), hint: sentenceIn(hint, quantities) }
}
