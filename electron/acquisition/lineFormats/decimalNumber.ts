/** Where a scan found its number: the value, and the index of the first byte after it. */
export type ScannedNumber = { value: number; next: number; whole: boolean }

const zero = 48
const plus = 43
const minus = 45
const point = 46
const letterE = 69
const smallE = 101
const noDigit = 10

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
  const negative = from < to && bytes[from] === minus
  const start = negative || (from < to && bytes[from] === plus) ? from + 1 : from
  let mantissa = 0
  let i = start
  for (let digit = digitAt(bytes, i, to); digit <= 9; digit = digitAt(bytes, ++i, to)) mantissa = mantissa * 10 + digit
  let digits = i - start
  let decimals = 0
  const hasPoint = i < to && bytes[i] === point
  if (hasPoint) {
    const first = ++i
    for (let digit = digitAt(bytes, i, to); digit <= 9; digit = digitAt(bytes, ++i, to))
      mantissa = mantissa * 10 + digit
    decimals = i - first
    digits += decimals
  }
  if (digits === 0) return false
  let exponent = 0
  if (i < to && (bytes[i] === letterE || bytes[i] === smallE)) {
    i = scanExponent(bytes, i, to, found)
    exponent = found.value
  }
  const scale = exponent - decimals
  let value = mantissa
  if (digits > exactDigits || scale < -22 || scale > 22) value = Number(textOf(bytes, start, i))
  // One correctly rounded operation on two exact numbers is the nearest double.
  else if (scale < 0) value = mantissa / powersOfTen[-scale]!
  else if (scale > 0) value = mantissa * powersOfTen[scale]!
  if (!Number.isFinite(value)) return false
  found.value = negative && value !== 0 ? -value : value
  found.next = i
  found.whole = !hasPoint && exponent === 0
  return true
}

/** The digit at a place before `to`; more than 9: there is none. */
function digitAt(bytes: Uint8Array, at: number, to: number): number {
  const digit = at < to ? bytes[at]! - zero : noDigit
  return digit < 0 ? noDigit : digit
}

/** Writes the exponent behind a letter e to `found` and returns where it ends; without a digit the letter is none of it. */
function scanExponent(bytes: Uint8Array, at: number, to: number, found: ScannedNumber): number {
  let i = at + 1
  const below = i < to && bytes[i] === minus
  if (below || (i < to && bytes[i] === plus)) i += 1
  const first = i
  let exponent = 0
  for (let digit = digitAt(bytes, i, to); digit <= 9; digit = digitAt(bytes, ++i, to))
    exponent = Math.min(exponent * 10 + digit, 9999)
  found.value = below ? -exponent : exponent
  return i > first ? i : at
}

/** Reads an unsigned whole number below 2^32 in plain digits; false when there is none. */
export function scanCounter(bytes: Uint8Array, from: number, to: number, found: ScannedNumber): boolean {
  let value = 0
  let i = from
  for (let digit = digitAt(bytes, i, to); digit <= 9; digit = digitAt(bytes, ++i, to)) {
    value = value * 10 + digit
    if (value > 0xffffffff) return false
  }
  if (i === from) return false
  found.value = value
  found.next = i
  found.whole = true
  return true
}
