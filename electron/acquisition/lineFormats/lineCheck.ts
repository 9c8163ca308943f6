/** What tells a line with a check value: the letters behind its $, and the value that its hexadecimal digits must give. */
export type LineCheck = {
  letters: string
  digits: number
  /** The value over bytes[from, to), which stand between $ and *. */
  of(bytes: Uint8Array, from: number, to: number): number
}

/** Exclusive or of bytes[from, to), the check value of NMEA 0183. */
export function exclusiveOr(bytes: Uint8Array, from: number, to: number): number {
  let sum = 0
  for (let i = from; i < to; i++) sum ^= bytes[i]!
  return sum
}

/** What a byte does to the check value: it divided by the polynomial x^16 + x^12 + x^5 + 1. */
const remainders = Uint16Array.from({ length: 256 }, (_, byte) => {
  let remainder = byte << 8
  for (let bit = 0; bit < 8; bit++) remainder = (remainder << 1) ^ (remainder & 0x8000 ? 0x1021 : 0)
  return remainder
})

/**
 * CRC-16/CCITT-FALSE of bytes[from, to): polynomial 1021, start FFFF, highest bit first, nothing turned over at the end.
 * Checked against its published check value and Python's binascii.crc_hqx.
 */
export function crc16(bytes: Uint8Array, from: number, to: number): number {
  let remainder = 0xffff
  for (let i = from; i < to; i++) remainder = ((remainder & 0xff) << 8) ^ remainders[(remainder >> 8) ^ bytes[i]!]!
  return remainder
}

/** The line formats with a check value. */
export const lineChecks = {
  checked: { letters: 'BL', digits: 2, of: exclusiveOr },
  crc: { letters: 'BC', digits: 4, of: crc16 },
} as const satisfies Record<string, LineCheck>
