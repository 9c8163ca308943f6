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
  const torn = Uint8Array.from({ length: width * height }, (_, i) => Number(isTorn(mask, i)))
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x
      const border = (x + 1 < width && torn[i + 1] !== torn[i]) || (y + 1 < height && torn[i + width] !== torn[i])
      const step = (x + y) % stripe
      if (!border && (torn[i] === 0 || step > 1)) continue
      const shade = border ? 255 * torn[i]! : step === 0 ? 255 : 0
      painted[4 * i] = shade
      painted[4 * i + 1] = shade
      painted[4 * i + 2] = shade
    }
  return painted
}
