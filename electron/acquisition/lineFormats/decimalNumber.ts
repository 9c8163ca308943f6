/** Where a scan found its number: the value, and the index of the first byte after it. */
export type ScannedNumber = { value: number; next: number; whole: boolean }

const zero = 48
const nine = 57
const plus = 43
const minus = 45
const point = 46

const powersOfTen = Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`))
/** A whole number of so many digits is exact in a double; longer ones take the slow way. */
const exactDigits = 15

function textOf(bytes: Uint8Array, from: number, to: number): string {
  let text = ''
  for (let i = from; i < to; i++) text += String.fromCharCode(bytes[i]!)
  return text
}

/**
 * Reads a decimal number (sign, digits, point, exponent) that begins at `from` and ends before `to`; false when there is
 * none. Leading zeros, "12.", ".5" and "1e3" are numbers; a sign or point alone, "NaN" and a decimal comma are not.
 * The value is the double nearest to the text, as Number() gives it. Bytes are ASCII; nothing is allocated.
 */
export function scanDecimal(bytes: Uint8Array, from: number, to: number, found: ScannedNumber): boolean {
  let i = from
  let negative = false
  if (i < to && (bytes[i] === minus || bytes[i] === plus)) {
    negative = bytes[i] === minus
    i += 1
  }
  const start = i
  let mantissa = 0
  let digits = 0
  let significant = 0
  let decimals = 0
  let seenPoint = false
  for (; i < to; i++) {
    const byte = bytes[i]!
    if (byte >= zero && byte <= nine) {
      digits += 1
      if (significant > 0 || byte !== zero) significant += 1
      mantissa = mantissa * 10 + (byte - zero)
      if (seenPoint) decimals += 1
    } else if (byte === point && !seenPoint) seenPoint = true
    else break
  }
  if (digits === 0) return false
  let exponent = 0
  // 101 and 69 are e and E; without a digit behind, the letter belongs to whatever follows.
  if (i < to && (bytes[i] === 101 || bytes[i] === 69)) {
    let j = i + 1
    let below = false
    if (j < to && (bytes[j] === minus || bytes[j] === plus)) {
      below = bytes[j] === minus
      j += 1
    }
    const firstDigit = j
    for (; j < to && bytes[j]! >= zero && bytes[j]! <= nine; j++)
      exponent = Math.min(exponent * 10 + (bytes[j]! - zero), 9999)
    if (j > firstDigit) {
      if (below) exponent = -exponent
      i = j
    }
  }
  const scale = exponent - decimals
  let value: number
  // One correctly rounded operation on two exact numbers is the nearest double.
  if (significant <= exactDigits && scale >= -22 && scale <= 22)
    value = scale < 0 ? mantissa / powersOfTen[-scale]! : mantissa * powersOfTen[scale]!
  else value = Number(textOf(bytes, start, i))
  if (!Number.isFinite(value)) return false
  found.value = negative && value !== 0 ? -value : value
  found.next = i
  found.whole = !seenPoint && exponent === 0
  return true
}

/** Reads an unsigned whole number below 2^32 in plain digits; false when there is none. */
export function scanCounter(bytes: Uint8Array, from: number, to: number, found: ScannedNumber): boolean {
  let i = from
  let value = 0
  for (; i < to; i++) {
    const byte = bytes[i]!
    if (byte < zero || byte > nine) break
    value = value * 10 + (byte - zero)
    if (value > 0xffffffff) return false
  }
  if (i === from) return false
  found.value = value
  found.next = i
  found.whole = true
  return true
}
