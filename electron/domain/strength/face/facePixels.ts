import { type FaceCorners, homographyOf, projected } from './homography.ts'
import type { Plane } from './planes.ts'

/** A picture as a screen shows it: red, green, blue and opacity of each pixel, sRGB, row by row from the upper left. */
export type ShownPicture = {
  readonly width: number
  readonly height: number
  readonly pixels: Uint8ClampedArray<ArrayBuffer>
}

/** The bonded area seen straight on: linear light, 0 dark to 1 white. */
export type FacePixels = { readonly red: Plane; readonly green: Plane; readonly blue: Plane }

/** Linear light of each sRGB value. Source: IEC 61966-2-1. */
const lightOf = Float32Array.from({ length: 256 }, (_, value) => {
  const shown = value / 255
  return shown <= 0.04045 ? shown / 12.92 : ((shown + 0.055) / 1.055) ** 2.4
})

const shownOf = (light: number) => (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055)

/** A face in linear light as a screen shows it, sRGB. */
export function shownFace({ red, green, blue }: FacePixels): ShownPicture {
  const { width, height } = red
  const pixels = new Uint8ClampedArray(4 * width * height).fill(255)
  for (const [k, { values }] of [red, green, blue].entries())
    for (let i = 0; i < values.length; i++) pixels[4 * i + k] = 255 * shownOf(values[i]!)
  return { width, height, pixels }
}

/** Pixels along the longer side of the area seen straight on. */
const longerSide = 480

/** Width and height in pixels of an area of these proportions (width divided by height), seen straight on. */
export function faceSize(proportion: number): { width: number; height: number } {
  if (!(proportion > 0 && Number.isFinite(proportion))) throw new RangeError('faceSize requires a proportion above 0')
  const short = (share: number) => Math.max(24, Math.round(longerSide * share))
  return proportion >= 1
    ? { width: longerSide, height: short(1 / proportion) }
    : { width: short(proportion), height: longerSide }
}

/** Light at a place of the picture, between the four nearest pixels, added to the sums at `at`. */
function addLight(picture: ShownPicture, x: number, y: number, planes: readonly Plane[], at: number, share: number) {
  const { width, height, pixels } = picture
  const left = Math.min(Math.max(x - 0.5, 0), width - 1)
  const top = Math.min(Math.max(y - 0.5, 0), height - 1)
  const column = Math.min(Math.floor(left), Math.max(width - 2, 0))
  const row = Math.min(Math.floor(top), Math.max(height - 2, 0))
  const u = left - column
  const v = top - row
  const right = column + 1 < width ? 4 : 0
  const below = row + 1 < height ? 4 * width : 0
  const first = 4 * (row * width + column)
  for (let k = 0; k < 3; k++) {
    const from = first + k
    const upper = (1 - u) * lightOf[pixels[from]!]! + u * lightOf[pixels[from + right]!]!
    const lower = (1 - u) * lightOf[pixels[from + below]!]! + u * lightOf[pixels[from + below + right]!]!
    planes[k]!.values[at]! += share * ((1 - v) * upper + v * lower)
  }
}

/**
 * The bonded area of a picture with the perspective removed, in linear light; yields the share done after every few rows.
 *
 * Each pixel is the mean of as many places of the picture as it covers along each side, at most 4 x 4. Places beyond the picture
 * take its nearest pixel. Throws RangeError for corners of a field with a dent or a crossing.
 */
export function* straightened(
  picture: ShownPicture,
  corners: FaceCorners,
  proportion: number,
): Generator<number, FacePixels> {
  const { width, height } = faceSize(proportion)
  const map = homographyOf(corners, width, height)
  const dark = (): Plane => ({ width, height, values: new Float32Array(width * height) })
  const planes = [dark(), dark(), dark()] as const
  const side = (from: 0 | 1 | 2 | 3, to: 0 | 1 | 2 | 3) =>
    Math.hypot(corners[to].x - corners[from].x, corners[to].y - corners[from].y)
  const pixelsEach = Math.max(side(0, 1) / width, side(3, 2) / width, side(1, 2) / height, side(0, 3) / height)
  const rays = Math.min(4, Math.max(1, Math.ceil(pixelsEach)))
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++)
      for (let i = 0; i < rays * rays; i++) {
        const place = projected(map, x + ((i % rays) + 0.5) / rays, y + (Math.floor(i / rays) + 0.5) / rays)
        addLight(picture, place.x, place.y, planes, y * width + x, 1 / (rays * rays))
      }
    if (y % 16 === 15) yield (y + 1) / height
  }
  return { red: planes[0], green: planes[1], blue: planes[2] }
}
