/** Where a scan found its number: the value, and the index of the first byte after it. */
export type ScannedNumber = { value: number; next: number; whole: boolean }

const zero = 48
const nine = 57
const plus = 43
const minus = 45
const point = 46
const letterE = 69
const smallE = 101

const powersOfTen = Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`))
/** A whole number of so many digits is exact in a double; longer ones take the slow way. */
const exactDigits = 15
const largestCounter = 0xffffffff

function textOf(bytes: Uint8Array, from: number, to: number): string {
  let text = ''
  for (let i = from; i < to; i++) text += String.fromCharCode(bytes[i]!)
  return text
}

/**
 * Reads a decimal number (sign, digits, point, exponent) that begins at `from` and ends at the first byte that is none of
 * it; false when there is none. Leading zeros, "12.", ".5" and "1e3" are numbers; a sign or point alone, "NaN" and a
 * decimal comma are not. The value is the double nearest to the text, as Number() gives it; beyond ±(2^53 − 1), where not
 * every whole number has a double of its own, there is none. Bytes are ASCII; nothing is allocated.
 */
export function scanDecimal(bytes: Uint8Array, from: number, found: ScannedNumber): boolean {
  const first = bytes[from]!
  const start = first === minus || first === plus ? from + 1 : from
  let mantissa = 0
  let i = start
  let byte = bytes[i]!
  for (; byte >= zero && byte <= nine; byte = bytes[++i]!) mantissa = mantissa * 10 + (byte - zero)
  const whole = byte !== point
  let decimals = 0
  if (!whole) {
    const firstDecimal = ++i
    for (byte = bytes[i]!; byte >= zero && byte <= nine; byte = bytes[++i]!) mantissa = mantissa * 10 + (byte - zero)
    decimals = i - firstDecimal
  }
  const digits = whole ? i - start : i - start - 1
  if (digits === 0) return false
  let value = mantissa
  let exponent = 0
  if (!whole || digits > exactDigits || byte === letterE || byte === smallE) {
    i = scanExponent(bytes, i, found)
    exponent = found.value
    value = scaled(mantissa, digits, exponent - decimals) ?? Number(textOf(bytes, start, i))
    if (value > Number.MAX_SAFE_INTEGER) return false
  }
  found.value = first === minus && value !== 0 ? -value : value
  found.next = i
  found.whole = whole && exponent === 0
  return true
}

/** mantissa × 10^exponent as the nearest double, where one rounding gives it; null: it does not. */
function scaled(mantissa: number, digits: number, exponent: number): number | null {
  if (digits > exactDigits || exponent < -22 || exponent > 22) return null
  return exponent < 0 ? mantissa / powersOfTen[-exponent]! : mantissa * powersOfTen[exponent]!
}

/** Writes the exponent at a place to `found`, 0 for none, and returns where it ends; without a digit the letter e is none of it. */
function scanExponent(bytes: Uint8Array, at: number, found: ScannedNumber): number {
  found.value = 0
  if (bytes[at] !== letterE && bytes[at] !== smallE) return at
  const below = bytes[at + 1] === minus
  let i = below || bytes[at + 1] === plus ? at + 2 : at + 1
  const first = i
  let exponent = 0
  for (let byte = bytes[i]!; byte >= zero && byte <= nine; byte = bytes[++i]!)
    exponent = Math.min(exponent * 10 + (byte - zero), 9999)
  if (i === first) return at
  found.value = below ? -exponent : exponent
  return i
}

/** Reads an unsigned whole number below 2^32 in plain digits; false when there is none. */
export function scanCounter(bytes: Uint8Array, from: number, found: ScannedNumber): boolean {
  let value = 0
  let i = from
  for (let byte = bytes[i]!; byte >= zero && byte <= nine; byte = bytes[++i]!) {
    value = value * 10 + (byte - zero)
    if (value > largestCounter) return false
  }
  if (i === from) return false
  found.value = value
  found.next = i
  found.whole = true
  return true
}
