import { expect, it } from 'vitest'
import { pointShapes } from '#figures/drawing/mark.ts'
import { pointMark, reachOf, shapePath } from '#figures/drawing/pointShape.ts'

it('gives each shape an outline of its own', () => {
  expect(new Set(pointShapes.map((shape) => shapePath(shape, { x: 0, y: 0 }, 1))).size).toBe(pointShapes.length)
})

it.each(pointShapes)('keeps a %s within its reach about its middle, on both sides of it', (shape) => {
  const places: { x: number; y: number }[] = []
  for (const [, command, words] of shapePath(shape, { x: 100, y: 100 }, 2).matchAll(/([Mla])([^MlaZ]*)/g)) {
    const [x, y] = words!.trim().split(' ').slice(-2).map(Number) as [number, number]
    const from = command === 'M' ? { x: 0, y: 0 } : places.at(-1)!
    places.push({ x: from.x + x, y: from.y + y })
  }
  for (const { x, y } of places) expect(Math.hypot(x - 100, y - 100)).toBeLessThanOrEqual(reachOf(2))
  expect(Math.min(...places.map(({ x }) => x))).toBeLessThan(93)
  expect(Math.max(...places.map(({ x }) => x))).toBeGreaterThan(107)
})

it('draws a hollow point with another ink', () => {
  expect(pointMark('circle', { x: 0, y: 0 }, 1, true)).toMatchObject({ ink: 'hollow' })
  expect(pointMark('circle', { x: 0, y: 0 }, 1, false)).toMatchObject({ ink: 'point' })
})
