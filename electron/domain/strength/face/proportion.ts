import type { FaceCorners } from './homography.ts'

/** Length and width of a bonded area, mm. */
export type AreaSides = { readonly lengthMm: number; readonly widthMm: number }

/**
 * Width over height of a bonded area whose corners are marked in a picture: that of its sides, taken the way that comes nearer to what the
 * corners show; of the corners alone where the sides are not known. A camera that is held aslant makes the latter a little wrong, which
 * changes the share of a surface little.
 */
export function proportionOf(corners: FaceCorners, sides: AreaSides | null): number {
  const [a, b, c, d] = corners
  const length = (from: { x: number; y: number }, to: { x: number; y: number }) =>
    Math.hypot(to.x - from.x, to.y - from.y)
  const seen = (length(a, b) + length(d, c)) / (length(b, c) + length(a, d))
  if (sides === null) return seen
  const known = sides.lengthMm / sides.widthMm
  const away = (proportion: number) => Math.abs(Math.log(proportion / seen))
  return away(known) <= away(1 / known) ? known : 1 / known
}
