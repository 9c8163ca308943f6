import { type ScannedNumber, scanCounter, scanDecimal } from './decimalNumber.ts'
import { carriageReturn, type LineDecoder, lineFeed } from './lineDecoder.ts'

const dollar = 36
const comma = 44
const star = 42
const letterB = 66
const letterL = 76

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
    decode(bytes, from) {
      if (bytes[from] !== dollar || bytes[from + 1] !== letterB) return -1
      if (bytes[from + 2] !== letterL || bytes[from + 3] !== comma) return -1
      if (!scanCounter(bytes, from + 4, found) || bytes[found.next] !== comma) return -1
      decoder.sequence = found.value
      if (!scanCounter(bytes, found.next + 1, found) || bytes[found.next] !== comma) return -1
      decoder.deviceTimeUs = found.value
      if (!scanDecimal(bytes, found.next + 1, found) || !found.whole || bytes[found.next] !== star) return -1
      decoder.value = found.value
      const starAt = found.next
      const high = hexadecimal(bytes[starAt + 1]!)
      const low = hexadecimal(bytes[starAt + 2]!)
      if (high < 0 || low < 0 || exclusiveOr(bytes, from + 1, starAt) !== high * 16 + low) return -1
      const end = bytes[starAt + 3] === carriageReturn ? starAt + 4 : starAt + 3
      return bytes[end] === lineFeed ? end : -1
    },
  }
  return decoder
}
