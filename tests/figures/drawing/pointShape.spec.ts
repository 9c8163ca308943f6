import { expect, it } from 'vitest'
import { pointShapes } from '#figures/drawing/mark.ts'
import { pointMark, reachOf, shapePath } from '#figures/drawing/pointShape.ts'

it('gives each shape an outline of its own', () => {
  expect(new Set(pointShapes.map((shape) => shapePath(shape, { x: 0, y: 0 }, 1))).size).toBe(pointShapes.length)
})

it.each(pointShapes)('keeps a %s within its reach about its middle', (shape) => {
  const corners = [...shapePath(shape, { x: 100, y: 100 }, 2).matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)]
  for (const [, x, y] of corners) expect(Math.hypot(Number(x) - 100, Number(y) - 100)).toBeLessThanOrEqual(reachOf(2))
})

it('draws a hollow point with another ink', () => {
  expect(pointMark('circle', { x: 0, y: 0 }, 1, true)).toMatchObject({ ink: 'hollow' })
  expect(pointMark('circle', { x: 0, y: 0 }, 1, false)).toMatchObject({ ink: 'point' })
})
