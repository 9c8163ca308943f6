import { createHash } from 'node:crypto'
import type { SampleBlock } from '#contract/breaks/curve.ts'

/** Longest text of one sample: 16 digits, comma, 25 characters of a double, new line. */
const longestLine = 48
const chunkBytes = 1 << 16
const comma = 44
const newLine = 10
const minus = 45
const zero = 48

/** Writes a whole number in decimal and returns where it ended. */
function writeWhole(value: number, bytes: Uint8Array, start: number): number {
  let at = start
  let rest = value
  if (rest < 0) {
    bytes[at++] = minus
    rest = -rest
  }
  const first = at
  do {
    const tenth = Math.floor(rest / 10)
    bytes[at++] = zero + (rest - tenth * 10)
    rest = tenth
  } while (rest > 0)
  bytes.subarray(first, at).reverse()
  return at
}

function writeReading(value: number, bytes: Uint8Array, start: number): number {
  if (Number.isSafeInteger(value)) return writeWhole(value, bytes, start)
  const text = String(value)
  for (let i = 0; i < text.length; i++) bytes[start + i] = text.charCodeAt(i)
  return start + text.length
}

/**
 * SHA-256 of a curve's content, independent of how it is coded: over the text `time_us,reading` and a line feed for each
 * sample, numbers as ECMAScript writes them (shortest decimal that reads back as the same double). Text, so that anybody
 * can compute it in 2056 with a shell.
 */
export function curveSha256(curve: SampleBlock): string {
  const hash = createHash('sha256')
  const bytes = new Uint8Array(chunkBytes)
  let at = 0
  for (let i = 0; i < curve.timeUs.length; i++) {
    at = writeWhole(curve.timeUs[i]!, bytes, at)
    bytes[at++] = comma
    at = writeReading(curve.readings[i]!, bytes, at)
    bytes[at++] = newLine
    if (at > chunkBytes - longestLine) {
      hash.update(bytes.subarray(0, at))
      at = 0
    }
  }
  return hash.update(bytes.subarray(0, at)).digest('hex')
}
