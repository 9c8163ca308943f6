import type { ReadingUnit } from '#contract/calibration/forceScale.ts'

/** Takes one line apart. After `decode` said true, the fields hold what the line says; NaN for what it does not. */
export type LineDecoder = {
  value: number
  deviceTimeUs: number
  sequence: number
  unit: ReadingUnit
  /** The line is bytes[from, to) without its line end. False: it is no line of this format. */
  decode(bytes: Uint8Array, from: number, to: number): boolean
}

/** Space, tab and carriage return, which some devices put before or behind a value. */
export function isBlank(byte: number): boolean {
  return byte === 32 || byte === 9 || byte === 13
}
