import type { Plane } from './planes.ts'

/** Means over 2 r + 1 neighbours along one line of pixels; the last pixel stands for what lies beyond it. */
function meansAlong(from: Float32Array, to: Float32Array, start: number, step: number, n: number, radius: number) {
  const at = (i: number) => from[start + Math.min(Math.max(i, 0), n - 1) * step]!
  let sum = 0
  for (let i = -radius; i <= radius; i++) sum += at(i)
  for (let i = 0; i < n; i++) {
    to[start + i * step] = sum / (2 * radius + 1)
    sum += at(i + radius + 1) - at(i - radius)
  }
}

/**
 * Mean of the square of (2 r + 1)² pixels about each pixel, in the unit of the plane; edge pixels are repeated outwards.
 *
 * Rows first, then columns, with a sliding sum: the time does not depend on the radius.
 * Checked: tests/domain/strength/face/boxMean.spec.ts against scipy.ndimage.uniform_filter(mode='nearest').
 */
export function boxMean({ width, height, values }: Plane, radius: number): Plane {
  const rows = new Float32Array(values.length)
  for (let y = 0; y < height; y++) meansAlong(values, rows, y * width, 1, width, radius)
  const means = new Float32Array(values.length)
  for (let x = 0; x < width; x++) meansAlong(rows, means, x, width, height, radius)
  return { width, height, values: means }
}
