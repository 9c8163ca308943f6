// Held by tests/acquisition/lineFormats/lineParser.spec.ts.
import { type ScannedNumber, scanDecimal } from './decimalNumber.ts'
import { afterBlanks, isBlank, type LineDecoder, lineEndAt, lineFeed } from './lineDecoder.ts'

const minus = 45
const plus = 43

const unitWords = (['N', 'kN', 'lbf', 'kgf', 'kg', 'g'] as const).map((unit) => ({
  unit,
  bytes: [...unit].map((letter) => letter.charCodeAt(0)),
}))

/** `number`: one decimal number, blanks around it and after its sign, an optional unit word; counts without one. */
export function createNumberDecoder(): LineDecoder {
  const found: ScannedNumber = { value: 0, next: 0, whole: true }
  const decoder: LineDecoder = {
    value: 0,
    deviceTimeUs: Number.NaN,
    sequence: Number.NaN,
    unit: 'counts',
    decode(bytes, from) {
      let start = afterBlanks(bytes, from)
      let negative = false
      // "-   12.5 g": a sign, blanks, then the digits, as balances print it.
      if (isSign(bytes[start]!) && isBlank(bytes[start + 1]!)) {
        negative = bytes[start] === minus
        start = afterBlanks(bytes, start + 1)
        if (isSign(bytes[start]!)) return -1
      }
      if (!scanDecimal(bytes, start, found)) return -1
      decoder.value = negative && found.value !== 0 ? -found.value : found.value
      decoder.unit = 'counts'
      const next = afterBlanks(bytes, found.next)
      return bytes[next] === lineFeed ? next : unitAndEnd(bytes, next)
    },
  }

  function unitAndEnd(bytes: Uint8Array, from: number): number {
    for (const word of unitWords) {
      if (!word.bytes.every((byte, i) => byte === bytes[from + i])) continue
      decoder.unit = word.unit
      const end = lineEndAt(bytes, from + word.bytes.length)
      if (end >= 0) return end
    }
    return -1
  }

  return decoder
}

function isSign(byte: number): boolean {
  return byte === minus || byte === plus
}
