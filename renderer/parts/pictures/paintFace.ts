import type { ShownPicture } from '#domain/strength/face/facePixels.ts'
import { isTorn, type TornMask } from '#domain/strength/face/tornMask.ts'

/** Pixels from one stripe of the hatching to the next. */
const stripe = 8

/**
 * The pixels of a face with its torn wood hatched, a white line beside a black one, so that it is seen on any ground and without colour; the
 * border of torn wood is drawn in the same way.
 */
export function hatchedFace({ width, height, pixels }: ShownPicture, mask: TornMask): Uint8ClampedArray<ArrayBuffer> {
  const painted = new Uint8ClampedArray(pixels)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x
      const torn = isTorn(mask, i)
      const border =
        (x + 1 < width && isTorn(mask, i + 1) !== torn) || (y + 1 < height && isTorn(mask, i + width) !== torn)
      const step = (x + y) % stripe
      if (!border && !(torn && step < 2)) continue
      painted.fill(border ? (torn ? 255 : 0) : step === 0 ? 255 : 0, 4 * i, 4 * i + 3)
    }
  return painted
}
