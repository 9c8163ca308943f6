import { expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { planeOf } from '#domain/strength/face/planes.ts'
import { freeOfBorder, surfaceFeatures } from '#domain/strength/face/surfaceFeatures.ts'
import { outcomeOf } from '#tests/reference/faces/outcomeOf.ts'

const size = { width: 90, height: 60 }

/** A face of one colour whose light at each pixel is so many times its own. */
function lit(light: (x: number, y: number) => number) {
  const channel = (share: number) => planeOf(size, (i) => share * light(i % size.width, Math.floor(i / size.width)))
  return { red: channel(0.6), green: channel(0.4), blue: channel(0.2) }
}

it('sees a shadow in the luminance and hardly in the colour ratios', () => {
  const { luminance, redGreen, blueGreen } = outcomeOf(surfaceFeatures(lit((x) => (x < 45 ? 1 : 0.5))))
  const across = (values: Float32Array) => values[30 * 90 + 10]! - values[30 * 90 + 80]!
  expect(across(luminance.values)).toBeGreaterThan(0.6)
  expect(Math.abs(across(redGreen.values))).toBeLessThan(0.03)
  expect(Math.abs(across(blueGreen.values))).toBeLessThan(0.06)
})

it('finds stripes as broad as fibres rougher than a slope of light', () => {
  const striped = outcomeOf(surfaceFeatures(lit((_, y) => (y % 8 < 4 ? 1 : 0.8))))
  const sloping = outcomeOf(surfaceFeatures(lit((_, y) => 1 - 0.2 * (y / 60))))
  expect(striped.texture.values[30 * 90 + 45]! - sloping.texture.values[30 * 90 + 45]!).toBeGreaterThan(1.5)
})

it('raises the texture at the border of two smooth surfaces much less than the roughness', () => {
  const random = createRandom(6)
  const grit = Float32Array.from({ length: size.width * size.height }, () => Math.exp(0.05 * random.normal()))
  const bordered = lit((x, y) => (x < 45 ? 1 : 0.4) * grit[y * size.width + x]!)
  const { roughness, texture } = outcomeOf(surfaceFeatures(bordered))
  const border = 30 * 90 + 45
  const away = border + 2 * freeOfBorder
  const rougher = 0.5 * Math.log(roughness.values[border]! / roughness.values[away]!)
  expect(rougher).toBeGreaterThan(2)
  expect(texture.values[border]! - texture.values[away]!).toBeLessThan(0.8 * rougher)
})

it('hardly takes the noise of single pixels for fibres', () => {
  const random = createRandom(5)
  const noise = Float32Array.from({ length: size.width * size.height }, () => Math.exp(0.1 * random.normal()))
  const noisy = outcomeOf(surfaceFeatures(lit((x, y) => noise[y * size.width + x]!)))
  const striped = outcomeOf(surfaceFeatures(lit((_, y) => Math.exp(0.1 * (y % 8 < 4 ? 1 : -1)))))
  const middle = 30 * 90 + 45
  expect(striped.roughness.values[middle]!).toBeGreaterThan(4 * noisy.roughness.values[middle]!)
})
