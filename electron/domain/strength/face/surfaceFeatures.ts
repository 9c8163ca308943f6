import { boxMean } from './boxMean.ts'
import type { FacePixels } from './facePixels.ts'
import { type Plane, planeOf } from './planes.ts'

/** What the two surfaces of a broken face may differ in, pixel by pixel. */
export type SurfaceFeatures = {
  /** Natural logarithm of luminance, of red over green and of blue over green; a shadow moves the first alone. */
  readonly luminance: Plane
  readonly redGreen: Plane
  readonly blueGreen: Plane
  /** Variance of the logarithm of luminance about a pixel, over lengths of fibres. */
  readonly roughness: Plane
  /** Half the natural logarithm of the least roughness about a pixel, so that the border of two surfaces looks no rougher than both. */
  readonly texture: Plane
}

// Light that is added before a logarithm is taken, as a share of white: the noise of a camera would rule in the dark.
const colourFloor = 0.02
const luminanceFloor = 0.03
/** Radii in pixels of a face 480 pixels long: of noise, of fibres, and of the window in which they are counted. */
const noiseRadius = 2
const fibreRadius = 4
const windowRadius = 4
/**
 * How far from a border a window is nearly free of it. The few pixels more that would free it wholly lose slim pieces of wood: then the
 * drawn faces with glue of the wood's colour are read with five times the error.
 */
export const freeOfBorder = windowRadius + fibreRadius - 1
const leastVariance = 1e-6

/** Least of the values at a pixel and eight others so far away in each direction. */
function leastAround({ width, height, values }: Plane, away: number): Plane {
  const least = (from: Float32Array, step: number, place: (i: number) => number, n: number) =>
    planeOf({ width, height }, (i) => {
      const at = place(i)
      const before = from[i - Math.min(away, at) * step]!
      const behind = from[i + Math.min(away, n - 1 - at) * step]!
      return Math.min(from[i]!, before, behind)
    })
  const rows = least(values, 1, (i) => i % width, width)
  return least(rows.values, width, (i) => Math.floor(i / width), height)
}

/** The features of a face in linear light; yields between them. */
export function* surfaceFeatures({ red, green, blue }: FacePixels): Generator<void, SurfaceFeatures> {
  const [r, g, b] = [red.values, green.values, blue.values]
  const smoothed = (plane: Plane) => boxMean(boxMean(plane, noiseRadius), noiseRadius)
  const ratio = (one: Float32Array) =>
    smoothed(planeOf(red, (i) => Math.log((one[i]! + colourFloor) / (g[i]! + colourFloor))))
  // Weights of ITU-R BT.709.
  const light = planeOf(red, (i) => Math.log(0.2126 * r[i]! + 0.7152 * g[i]! + 0.0722 * b[i]! + luminanceFloor))
  yield
  const redGreen = ratio(r)
  yield
  const blueGreen = ratio(b)
  yield
  const quiet = boxMean(light, noiseRadius)
  const base = boxMean(quiet, fibreRadius)
  const roughness = boxMean(
    planeOf(red, (i) => (quiet.values[i]! - base.values[i]!) ** 2),
    windowRadius,
  )
  yield
  const least = boxMean(leastAround(roughness, freeOfBorder), 1)
  const texture = planeOf(red, (i) => 0.5 * Math.log(least.values[i]! + leastVariance))
  yield
  return { luminance: smoothed(light), redGreen, blueGreen, roughness, texture }
}
