/** A place in a picture: pixels from its upper left edge, the middle of the first pixel at 0.5. */
export type PicturePoint = { readonly x: number; readonly y: number }

/** The corners of the bonded area in a picture, in the order upper left, upper right, lower right, lower left of the area. */
export type FaceCorners = readonly [PicturePoint, PicturePoint, PicturePoint, PicturePoint]

/** The matrix of a projective map, row by row, its last number 1. */
export type Homography = readonly [number, number, number, number, number, number, number, number, 1]

/** Twice the area of the triangle of three places; positive where they turn clockwise, as y goes down. */
function turn(a: PicturePoint, b: PicturePoint, c: PicturePoint): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
}

/** Whether four corners bound a field without a dent or a crossing, in either sense of turning. */
export function isConvex([a, b, c, d]: FaceCorners): boolean {
  const turns = [turn(a, b, c), turn(b, c, d), turn(c, d, a), turn(d, a, b)]
  return turns.every((one) => one > 0) || turns.every((one) => one < 0)
}

/**
 * The projective map from a rectangle (0, 0) to (width, height) onto four corners, in the units of each.
 *
 *   g = |Σ e₂| / |e₁ e₂|    h = |e₁ Σ| / |e₁ e₂|      e₁ = p₁ − p₂, e₂ = p₃ − p₂, Σ = p₀ − p₁ + p₂ − p₃
 *
 * Closed form: one unit square, then its sides divided. Throws RangeError for corners that are not convex or a side not above 0.
 * Source: P. Heckbert, Fundamentals of Texture Mapping and Image Warping (1989), 2.2.3 (from memory).
 * Checked: tests/domain/strength/face/homography.spec.ts against getPerspectiveTransform of OpenCV 5.0.
 */
export function homographyOf(corners: FaceCorners, width: number, height: number): Homography {
  if (!isConvex(corners)) throw new RangeError('homographyOf requires corners of a field without dents')
  if (!(width > 0 && height > 0)) throw new RangeError('homographyOf requires sides above 0')
  const [p0, p1, p2, p3] = corners
  const ax = p1.x - p2.x
  const ay = p1.y - p2.y
  const bx = p3.x - p2.x
  const by = p3.y - p2.y
  const sx = p0.x - p1.x + p2.x - p3.x
  const sy = p0.y - p1.y + p2.y - p3.y
  const det = ax * by - bx * ay
  const g = (sx * by - bx * sy) / det
  const h = (ax * sy - sx * ay) / det
  return [
    (p1.x - p0.x + g * p1.x) / width,
    (p3.x - p0.x + h * p3.x) / height,
    p0.x,
    (p1.y - p0.y + g * p1.y) / width,
    (p3.y - p0.y + h * p3.y) / height,
    p0.y,
    g / width,
    h / height,
    1,
  ]
}

/** Where a homography puts a place. */
export function projected(m: Homography, x: number, y: number): PicturePoint {
  const w = m[6] * x + m[7] * y + 1
  return { x: (m[0] * x + m[1] * y + m[2]) / w, y: (m[3] * x + m[4] * y + m[5]) / w }
}
