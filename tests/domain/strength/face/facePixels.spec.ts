import { describe, expect, it } from 'vitest'
import { faceSize, shownFace, straightened } from '#domain/strength/face/facePixels.ts'
import type { FaceCorners } from '#domain/strength/face/homography.ts'
import { outcomeOf } from '#tests/reference/faces/outcomeOf.ts'

function picture(width: number, height: number, colourAt: (x: number, y: number) => readonly [number, number, number]) {
  const pixels = new Uint8ClampedArray(4 * width * height)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) pixels.set([...colourAt(x, y), 255], 4 * (y * width + x))
  return { width, height, pixels }
}

const whole = (width: number, height: number): FaceCorners => [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: height },
  { x: 0, y: height },
]

describe('the size of a face seen straight on', () => {
  it('has the proportions of the bonded area', () => {
    expect(faceSize(4 / 3)).toEqual({ width: 480, height: 360 })
    expect(faceSize(0.5)).toEqual({ width: 240, height: 480 })
  })

  it('keeps a strip high enough to look at', () => {
    expect(faceSize(100)).toEqual({ width: 480, height: 24 })
  })

  it.each([0, Number.NaN, Number.POSITIVE_INFINITY])('refuses a proportion of %d', (proportion) => {
    expect(() => faceSize(proportion)).toThrow(RangeError)
  })
})

describe('a face made straight', () => {
  it('is in linear light', () => {
    // IEC 61966-2-1: sRGB 188, 0 and 255 are linear 0.5029, 0 and 1.
    const { red, green, blue } = outcomeOf(
      straightened(
        picture(8, 8, () => [188, 0, 255]),
        whole(8, 8),
        1,
      ),
    )
    expect(red.values[1000]).toBeCloseTo(0.5029, 4)
    expect(green.values[1000]).toBe(0)
    expect(blue.values[1000]).toBeCloseTo(1, 6)
  })

  it('is shown again as it was', () => {
    const { pixels, width } = shownFace(
      outcomeOf(
        straightened(
          picture(8, 8, () => [188, 3, 255]),
          whole(8, 8),
          1,
        ),
      ),
    )
    expect(width).toBe(480)
    expect([...pixels.slice(4000, 4004)]).toEqual([188, 3, 255, 255])
  })

  it('shows the upper left of the area at the upper left, whichever way the picture was held', () => {
    const halves = picture(100, 100, (x) => (x < 50 ? [255, 255, 255] : [0, 0, 0]))
    const [a, b, c, d] = whole(100, 100)
    const light = (corners: FaceCorners, x: number, y: number) =>
      outcomeOf(straightened(halves, corners, 1)).red.values[y * 480 + x]
    expect(light([a, b, c, d], 20, 20)).toBeCloseTo(1, 6)
    expect(light([a, b, c, d], 460, 20)).toBe(0)
    expect(light([b, c, d, a], 20, 20)).toBe(0)
    expect(light([b, c, d, a], 20, 460)).toBeCloseTo(1, 6)
  })

  it('averages the light of all pixels that fall on one of its own', () => {
    const stripes = picture(1920, 4, (x) => (x % 2 === 0 ? [255, 255, 255] : [0, 0, 0]))
    const { red } = outcomeOf(straightened(stripes, whole(1920, 4), 4))
    for (const at of [0, 100, 20_000]) expect(red.values[at]).toBeCloseTo(0.5, 2)
  })

  it('repeats the edge of the picture beyond it', () => {
    const one = picture(10, 10, () => [255, 0, 0])
    const beyond = whole(10, 10).map(({ x, y }) => ({ x: 3 * x - 10, y: 3 * y - 10 })) as unknown as FaceCorners
    const { red } = outcomeOf(straightened(one, beyond, 1))
    expect(red.values.every((light) => Math.abs(light - 1) < 1e-6)).toBe(true)
  })
})
