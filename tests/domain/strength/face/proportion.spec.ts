import { expect, it } from 'vitest'
import { proportionOf } from '#domain/strength/face/proportion.ts'

const marked = (width: number, height: number) =>
  [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ] as const

it('is that of the sides of the area, whichever way the picture was held', () => {
  const sides = { lengthMm: 30, widthMm: 20 }
  expect(proportionOf(marked(160, 100), sides)).toBe(1.5)
  expect(proportionOf(marked(100, 170), sides)).toBeCloseTo(1 / 1.5, 12)
})

it('is that of the corners where the sides are not known', () => {
  expect(proportionOf(marked(160, 100), null)).toBe(1.6)
})
