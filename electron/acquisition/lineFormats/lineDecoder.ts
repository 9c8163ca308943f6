// Held by tests/acquisition/lineFormats/lineParser.spec.ts.
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'

/** Takes one line apart. After `decode` said where it ends, the fields hold what it says; NaN for what it does not. */
export type LineDecoder = {
  value: number
  deviceTimeUs: number
  sequence: number
  unit: ReadingUnit
  /**
   * Reads the line that begins at `from`; somewhere behind there must be a line feed. Returns the index of the line feed
   * that ends the line, −1: it is no line of this format.
   */
  decode(bytes: Uint8Array, from: number): number
}

export const lineFeed = 10
export const carriageReturn = 13

/** Space, tab and carriage return, which some devices put before or behind a value. */
export function isBlank(byte: number): boolean {
  return byte === 32 || byte === 9 || byte === carriageReturn
}

/** Index of the first byte from a place on that is not blank. */
export function afterBlanks(bytes: Uint8Array, from: number): number {
  let i = from
  while (isBlank(bytes[i]!)) i += 1
  return i
}

/** Index of the line feed that ends a line of which nothing but blanks is left; −1: there is more. */
export function lineEndAt(bytes: Uint8Array, from: number): number {
  const end = afterBlanks(bytes, from)
  return bytes[end] === lineFeed ? end : -1
}
