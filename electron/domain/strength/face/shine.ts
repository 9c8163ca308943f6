import { boxMean } from './boxMean.ts'
import type { FacePixels } from './facePixels.ts'
import { type Plane, planeOf } from './planes.ts'

const whiteFrom = 0.9
const saturatedFrom = 0.985
const haloRadius = 4

/** 1 where a pixel shows a colour, 0 in a glare or next to it, where the camera saw nothing but light. */
export function outsideGlare({ red, green, blue }: FacePixels): Plane {
  const glare = boxMean(
    planeOf(red, (i) => {
      const [r, g, b] = [red.values[i]!, green.values[i]!, blue.values[i]!]
      return Math.min(r, g, b) > whiteFrom || Math.max(r, g, b) >= saturatedFrom ? 1 : 0
    }),
    haloRadius,
  )
  return planeOf(red, (i) => (glare.values[i]! > 1e-3 ? 0 : 1))
}

/** Values with those at pixels that do not count (0) filled in from ever wider surroundings that do; yields between them. */
export function* filledFromAround(values: Plane, counts: Plane): Generator<void, Plane> {
  const filled = Float32Array.from(values.values)
  const open = counts.values.map((one) => 1 - one)
  const known = planeOf(values, (i) => values.values[i]! * counts.values[i]!)
  for (let radius = 6; radius < Math.max(values.width, values.height) && open.includes(1); radius *= 2) {
    const weight = boxMean(counts, radius)
    const sum = boxMean(known, radius)
    yield
    for (let i = 0; i < filled.length; i++)
      if (open[i] === 1 && weight.values[i]! > 0.05) {
        filled[i] = sum.values[i]! / weight.values[i]!
        open[i] = 0
      }
  }
  return { width: values.width, height: values.height, values: filled }
}
