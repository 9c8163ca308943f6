import type { ReadingBatch } from '../readingBatch.ts'

/**
 * Reads line after line of bytes[from, end), which ends just behind a line feed, straight into the batch, as long as
 * the lines are plain; returns where the first line begins that needs a closer look, or `end`. A plain line says what
 * the format's decoder would say of it, only faster: it is what a healthy device sends all day.
 */
export type PlainLines = (bytes: Uint8Array, from: number, end: number, batch: ReadingBatch) => number

const lineFeed = 10
const carriageReturn = 13
const dollar = 36
const star = 42
const plus = 43
const comma = 44
const minus = 45
const zero = 48
/** So many digits fit a 32-bit integer whatever they are; whole numbers that long are exact in either arithmetic. */
const integerDigits = 9
const letterB = 66
const letterL = 76
const startSum = letterB ^ letterL ^ comma
/** Nothing shorter than "$BL,0,0,5*17" and a line feed is a checked line. */
const shortestChecked = 13
const noDigit = 16
const largestCounter = 0xffffffff

/** Value of a hexadecimal digit by its code; `noDigit` for every other byte. */
const hexadecimal = Uint8Array.from({ length: 256 }, (_, byte) => {
  if (byte >= zero && byte <= 57) return byte - zero
  // Without the bit that makes a letter small.
  const letter = byte & ~32
  return letter >= 65 && letter <= 70 ? letter - 55 : noDigit
})

/** `number`: an optional sign and up to nine digits, nothing else. */
export function takePlainNumbers(bytes: Uint8Array, from: number, end: number, batch: ReadingBatch): number {
  // A line has two bytes at least.
  batch.reserve((end - from) >> 1)
  const { values, deviceTimeUs, sequence } = batch
  let { count } = batch
  let start = from
  while (start < end) {
    let i = start
    let byte = bytes[i]!
    const negative = byte === minus
    if (negative || byte === plus) byte = bytes[++i]!
    const first = i
    let value = 0
    // The line feed at the end stops every loop inside the array.
    for (let digit = byte - zero; digit >= 0 && digit <= 9; digit = byte - zero) {
      value = (Math.imul(value, 10) + digit) | 0
      byte = bytes[++i]!
    }
    const digits = i - first
    if (byte === carriageReturn) byte = bytes[++i]!
    if (byte !== lineFeed || digits === 0 || digits > integerDigits) break
    // 0 − 0 is 0, not −0.
    values[count] = negative ? 0 - value : value
    deviceTimeUs[count] = Number.NaN
    sequence[count] = Number.NaN
    count += 1
    // Set within the loop: behind it the compiler would leave its fast code at every chunk until it knows better.
    batch.count = count
    start = i + 1
  }
  return start
}

/** `checked`: exactly "$BL,counter,counter,whole number*HH"; the check value is summed in the same pass as the digits. */
export function takePlainChecked(bytes: Uint8Array, from: number, end: number, batch: ReadingBatch): number {
  batch.reserve(Math.ceil((end - from) / shortestChecked))
  const { values, deviceTimeUs, sequence } = batch
  let { count } = batch
  let start = from
  while (start + shortestChecked <= end) {
    if (bytes[start] !== dollar || bytes[start + 1] !== letterB) break
    if (bytes[start + 2] !== letterL || bytes[start + 3] !== comma) break
    let sum = startSum
    let i = start + 4
    let byte = bytes[i]!

    let number = 0
    let timeUs = 0
    let field = 0
    for (; field < 2; field++) {
      const first = i
      const wide = i + integerDigits
      let narrow = 0
      for (let digit = byte - zero; digit >= 0 && digit <= 9 && i < wide; digit = byte - zero) {
        sum ^= byte
        narrow = (Math.imul(narrow, 10) + digit) | 0
        byte = bytes[++i]!
      }
      let counter = narrow
      // Only the tenth digit of a counter may leave the 32-bit integers.
      if (i === wide && byte >= zero && byte <= zero + 9) {
        sum ^= byte
        counter = narrow * 10 + (byte - zero)
        byte = bytes[++i]!
      }
      if (i === first || byte !== comma || counter > largestCounter) break
      sum ^= comma
      byte = bytes[++i]!
      if (field === 0) number = counter
      else timeUs = counter
    }
    if (field < 2) break

    const negative = byte === minus
    if (negative || byte === plus) {
      sum ^= byte
      byte = bytes[++i]!
    }
    const first = i
    let value = 0
    for (let digit = byte - zero; digit >= 0 && digit <= 9; digit = byte - zero) {
      sum ^= byte
      value = (Math.imul(value, 10) + digit) | 0
      byte = bytes[++i]!
    }
    const digits = i - first
    if (byte !== star || digits === 0 || digits > integerDigits || i + 3 >= end) break
    // Half a check value is none: `noDigit` makes the sum larger than any byte.
    const claimed = hexadecimal[bytes[i + 1]!]! * 16 + hexadecimal[bytes[i + 2]!]!
    if (claimed !== sum) break
    i += 3
    if (bytes[i] === carriageReturn) i += 1
    if (i >= end || bytes[i] !== lineFeed) break

    values[count] = negative ? 0 - value : value
    deviceTimeUs[count] = timeUs
    sequence[count] = number
    count += 1
    // Set within the loop: behind it the compiler would leave its fast code at every chunk until it knows better.
    batch.count = count
    start = i + 1
  }
  return start
}
