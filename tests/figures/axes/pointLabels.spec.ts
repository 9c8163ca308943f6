import { describe, expect, it } from 'vitest'
import { overlap } from '#figures/axes/labelPlace.ts'
import { pointLabels } from '#figures/axes/pointLabels.ts'
import { textWidth } from '#figures/drawing/textWidth.ts'

const room = { x: 0, y: 0, width: 400, height: 300 }
const point = (x: number, y: number, text = 'pop-in', before = false) => ({ x, y, text, before })
const boxes = (points: ReturnType<typeof point>[], within = room) =>
  pointLabels(points, { room: within, drawn: [] }, 12).flatMap((mark) =>
    mark.kind === 'text'
      ? [
          {
            x: mark.anchor === 'end' ? mark.x - textWidth(mark.text, 12) : mark.x,
            y: mark.y - 11,
            width: textWidth(mark.text, 12),
            height: 14,
          },
        ]
      : [],
  )

describe('pointLabels', () => {
  it('stands beside its point: on the right, or on the left of what only begins', () => {
    const [right] = boxes([point(200, 100)])
    const [left] = boxes([point(200, 100, 'start of loading', true)])
    expect(right!.x).toBeGreaterThan(200)
    expect(left!.x + left!.width).toBeLessThan(200)
  })
  it('stands on the other side at the edge', () => {
    expect(boxes([point(390, 100)])[0]!.x).toBeLessThan(390)
    expect(boxes([point(5, 100, 'start of loading', true)])[0]!.x).toBeGreaterThan(5)
  })
  it('keeps many names at one place apart, and leads to those that stand away', () => {
    const points = Array.from({ length: 9 }, (_, index) => point(200 + index, 150))
    const placed = boxes(points)
    expect(placed).toHaveLength(9)
    for (const [index, box] of placed.entries())
      for (const other of placed.slice(index + 1)) expect(overlap(box, other)).toBe(false)
    expect(pointLabels(points, { room, drawn: [] }, 12).some(({ kind }) => kind === 'rule')).toBe(true)
  })
  it('gives way to what stands there already', () => {
    const standing = [{ x: 205, y: 90, width: 100, height: 20 }]
    const [mark] = pointLabels([point(200, 100)], { room, drawn: [], standing }, 12)
    expect(mark).toMatchObject({ kind: 'text', anchor: 'end' })
  })
  it('stands above or below a point beside which there is no room', () => {
    const narrow = { ...room, width: 110 }
    const [box] = boxes([point(55, 150, 'picked by hand')], narrow)
    expect(box!.x).toBeGreaterThanOrEqual(0)
    expect(box!.x + box!.width).toBeLessThanOrEqual(narrow.width)
    expect(Math.abs(box!.y + box!.height / 2 - 150)).toBeGreaterThan(20)
  })
  it('leaves a name out for which there is no place, the last first', () => {
    const low = { ...room, height: 16 }
    expect(
      pointLabels([point(20, 8, 'peak'), point(21, 8)], { room: { ...low, width: 80 }, drawn: [] }, 12),
    ).toMatchObject([{ kind: 'text', text: 'peak' }])
  })
})
