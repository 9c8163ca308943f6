import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { type ScannedNumber, scanDecimal } from './decimalNumber.ts'
import { isBlank, type LineDecoder } from './lineDecoder.ts'

const unitWords = (['N', 'kN', 'lbf', 'kgf', 'kg', 'g'] as const).map((unit) => ({
  unit,
  bytes: [...unit].map((letter) => letter.charCodeAt(0)),
}))

function unitOf(bytes: Uint8Array, from: number, to: number): ReadingUnit | null {
  for (const word of unitWords) {
    if (word.bytes.length !== to - from) continue
    if (word.bytes.every((byte, i) => byte === bytes[from + i])) return word.unit
  }
  return null
}

/** `number`: one decimal number, blanks around it and after its sign, an optional unit word; counts without one. */
export function createNumberDecoder(): LineDecoder {
  const found: ScannedNumber = { value: 0, next: 0, whole: true }
  const decoder: LineDecoder = {
    value: 0,
    deviceTimeUs: Number.NaN,
    sequence: Number.NaN,
    unit: 'counts',
    decode(bytes, from, to) {
      let start = from
      let end = to
      while (start < end && isBlank(bytes[start]!)) start += 1
      while (end > start && isBlank(bytes[end - 1]!)) end -= 1
      let negative = false
      // "-   12.5 g": a sign, blanks, then the digits, as balances print it.
      if (end - start > 1 && (bytes[start] === 45 || bytes[start] === 43) && isBlank(bytes[start + 1]!)) {
        negative = bytes[start] === 45
        start += 1
        while (start < end && isBlank(bytes[start]!)) start += 1
        if (bytes[start] === 45 || bytes[start] === 43) return false
      }
      if (!scanDecimal(bytes, start, end, found)) return false
      decoder.value = negative && found.value !== 0 ? -found.value : found.value
      let next = found.next
      if (next === end) {
        decoder.unit = 'counts'
        return true
      }
      while (next < end && isBlank(bytes[next]!)) next += 1
      const unit = unitOf(bytes, next, end)
      if (unit === null) return false
      decoder.unit = unit
      return true
    },
  }
  return decoder
}
