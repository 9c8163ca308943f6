import { expect, it } from 'vitest'
import { planeOf } from '#domain/strength/face/planes.ts'
import { tornMask } from '#domain/strength/face/tornMask.ts'
import { hatchedFace } from '#renderer/parts/pictures/paintFace.ts'

const size = { width: 32, height: 16 }
const face = { ...size, pixels: new Uint8ClampedArray(4 * 32 * 16).fill(128) }
const shadesIn = (painted: Uint8ClampedArray, from: number, to: number) => {
  const shades = new Set<number>()
  for (let y = 0; y < 16; y++) for (let x = from; x < to; x++) shades.add(painted[4 * (y * 32 + x)]!)
  return [...shades].sort((a, b) => a - b)
}

it('hatches torn wood in black and white, and leaves glue as it is', () => {
  const left = tornMask(
    planeOf(size, (i) => (i % 32 < 16 ? 75 : 25)),
    50,
  )
  const painted = hatchedFace(face, left)
  expect(shadesIn(painted, 0, 15)).toEqual([0, 128, 255])
  expect(shadesIn(painted, 16, 32)).toEqual([128])
})

it('draws the border of torn wood', () => {
  const left = tornMask(
    planeOf(size, (i) => (i % 32 < 16 ? 75 : 25)),
    50,
  )
  expect(shadesIn(hatchedFace(face, left), 15, 16)).toEqual([255])
})
