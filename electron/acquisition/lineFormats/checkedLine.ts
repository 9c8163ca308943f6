import { type ScannedNumber, scanCounter, scanDecimal } from './decimalNumber.ts'
import type { LineCheck } from './lineCheck.ts'
import { carriageReturn, type LineDecoder, lineFeed } from './lineDecoder.ts'

const dollar = 36
const comma = 44
const star = 42

function hexadecimal(byte: number): number {
  if (byte >= 48 && byte <= 57) return byte - 48
  if (byte >= 65 && byte <= 70) return byte - 55
  if (byte >= 97 && byte <= 102) return byte - 87
  return -1
}

/**
 * `checked` and `crc`: "$LL,sequence,microseconds,counts*HH" with the letters and as many hexadecimal digits as the check
 * has; accepted only when they are the check value of what stands between $ and *.
 */
export function createCheckedDecoder(check: LineCheck): LineDecoder {
  const { digits } = check
  const first = check.letters.charCodeAt(0)
  const second = check.letters.charCodeAt(1)
  const found: ScannedNumber = { value: 0, next: 0, whole: true }
  const decoder: LineDecoder = {
    value: 0,
    deviceTimeUs: Number.NaN,
    sequence: Number.NaN,
    unit: 'counts',
    decode(bytes, from) {
      if (bytes[from] !== dollar || bytes[from + 1] !== first) return -1
      if (bytes[from + 2] !== second || bytes[from + 3] !== comma) return -1
      if (!scanCounter(bytes, from + 4, found) || bytes[found.next] !== comma) return -1
      decoder.sequence = found.value
      if (!scanCounter(bytes, found.next + 1, found) || bytes[found.next] !== comma) return -1
      decoder.deviceTimeUs = found.value
      if (!scanDecimal(bytes, found.next + 1, found) || !found.whole || bytes[found.next] !== star) return -1
      decoder.value = found.value
      const starAt = found.next
      if (readHexadecimal(bytes, starAt + 1, digits) !== check.of(bytes, from + 1, starAt)) return -1
      const digitsEnd = starAt + 1 + digits
      const end = bytes[digitsEnd] === carriageReturn ? digitsEnd + 1 : digitsEnd
      return bytes[end] === lineFeed ? end : -1
    },
  }
  return decoder
}

/** The value of so many hexadecimal digits; -1 where one of them is none. */
function readHexadecimal(bytes: Uint8Array, from: number, digits: number): number {
  let value = 0
  for (let i = from; i < from + digits; i++) {
    const digit = hexadecimal(bytes[i]!)
    if (digit < 0) return -1
    value = value * 16 + digit
  }
  return value
}
