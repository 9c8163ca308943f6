import type { Plane } from './planes.ts'

/** Which pixels of a face are torn wood: one bit each, row by row, the first pixel in the highest bit of the first byte. */
export type TornMask = { readonly width: number; readonly height: number; readonly bits: Uint8Array }

/** The pixels whose score lies above a limit. */
export function tornMask({ width, height, values }: Plane, limit: number): TornMask {
  const bits = new Uint8Array(Math.ceil(values.length / 8))
  for (let i = 0; i < values.length; i++) if (values[i]! > limit) bits[i >> 3]! |= 0x80 >> (i & 7)
  return { width, height, bits }
}

/** Whether a pixel of a mask is torn wood. */
export function isTorn({ bits }: TornMask, i: number): boolean {
  return (bits[i >> 3]! & (0x80 >> (i & 7))) !== 0
}

/** Torn wood of a mask, in percent of its pixels. */
export function tornPercent(mask: TornMask): number {
  const n = mask.width * mask.height
  let torn = 0
  for (let i = 0; i < n; i++) if (isTorn(mask, i)) torn += 1
  return (100 * torn) / n
}

/** The bits of a mask as hexadecimal digits. */
export function maskDigits({ bits }: TornMask): string {
  return Array.from(bits, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
