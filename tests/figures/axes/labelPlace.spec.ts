import { describe, expect, it } from 'vitest'
import { alongLine, freePlace, overlap } from '#figures/axes/labelPlace.ts'

const box = (x: number, y: number) => ({ x, y, width: 10, height: 10 })
const room = { x: 0, y: 0, width: 100, height: 100 }

describe('freePlace', () => {
  const covered = [{ x: 5, y: 5 }]
  it('takes the first place wanted that is free', () => {
    expect(freePlace([box(0, 0), box(20, 0), box(40, 0)], { room, taken: [box(5, 5)] })).toEqual(box(20, 0))
  })
  it('takes none that reaches out of the room', () => {
    expect(freePlace([box(-1, 0), box(0, 95), box(95, 0)], { room, taken: [] })).toBeNull()
  })
  it('takes one that covers fewer points before one that is wanted more', () => {
    expect(freePlace([box(0, 0), box(20, 0)], { room, taken: [], points: covered })).toEqual(box(20, 0))
    expect(freePlace([box(0, 0)], { room, taken: [], points: covered })).toEqual(box(0, 0))
  })
  it('covers a point rather than take a place that is wanted much less', () => {
    const wanted = [box(0, 0), box(20, 0)]
    expect(freePlace(wanted, { room, taken: [], points: covered, laterPoints: 2 })).toEqual(box(0, 0))
    expect(freePlace(wanted, { room, taken: [], points: covered, laterPoints: 0.5 })).toEqual(box(20, 0))
  })
})

it('lets two places touch', () => {
  expect(overlap(box(0, 0), box(10, 0))).toBe(false)
  expect(overlap(box(0, 0), box(9, 9))).toBe(true)
})

it('puts points along a line close enough, its ends among them', () => {
  const points = alongLine(
    [
      { x: 0, y: 0 },
      { x: 30, y: 40 },
      { x: 30, y: 41 },
    ],
    5,
  )
  for (const [index, { x, y }] of points.entries()) {
    const nearest = Math.min(
      ...points.filter((_, i) => i !== index).map((other) => Math.hypot(other.x - x, other.y - y)),
    )
    expect(nearest).toBeLessThanOrEqual(5)
  }
  expect(points).toEqual(
    expect.arrayContaining([
      { x: 0, y: 0 },
      { x: 30, y: 40 },
      { x: 30, y: 41 },
    ]),
  )
})
