import { type ScannedNumber, scanCounter, scanDecimal } from './decimalNumber.ts'
import type { LineDecoder } from './lineDecoder.ts'

const dollar = 36
const comma = 44
const star = 42

function hexadecimal(byte: number): number {
  if (byte >= 48 && byte <= 57) return byte - 48
  if (byte >= 65 && byte <= 70) return byte - 55
  if (byte >= 97 && byte <= 102) return byte - 87
  return -1
}

/** Exclusive or of bytes[from, to), the check value of NMEA 0183. */
export function exclusiveOr(bytes: Uint8Array, from: number, to: number): number {
  let sum = 0
  for (let i = from; i < to; i++) sum ^= bytes[i]!
  return sum
}

/** `checked`: "$BL,sequence,microseconds,counts*HH", accepted only when HH is the exclusive or of what stands between $ and *. */
export function createCheckedDecoder(): LineDecoder {
  const found: ScannedNumber = { value: 0, next: 0, whole: true }
  const decoder: LineDecoder = {
    value: 0,
    deviceTimeUs: Number.NaN,
    sequence: Number.NaN,
    unit: 'counts',
    decode(bytes, from, to) {
      const starAt = to - 3
      if (starAt < from + 9 || bytes[from] !== dollar || bytes[starAt] !== star) return false
      if (bytes[from + 1] !== 66 || bytes[from + 2] !== 76 || bytes[from + 3] !== comma) return false
      const high = hexadecimal(bytes[to - 2]!)
      const low = hexadecimal(bytes[to - 1]!)
      if (high < 0 || low < 0 || exclusiveOr(bytes, from + 1, starAt) !== high * 16 + low) return false
      if (!scanCounter(bytes, from + 4, starAt, found) || bytes[found.next] !== comma) return false
      const sequence = found.value
      if (!scanCounter(bytes, found.next + 1, starAt, found) || bytes[found.next] !== comma) return false
      const deviceTimeUs = found.value
      if (!scanDecimal(bytes, found.next + 1, starAt, found) || !found.whole || found.next !== starAt) return false
      decoder.sequence = sequence
      decoder.deviceTimeUs = deviceTimeUs
      decoder.value = found.value
      return true
    },
  }
  return decoder
}
