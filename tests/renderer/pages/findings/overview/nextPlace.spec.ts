import { expect, it } from 'vitest'
import { nextPlace } from '#renderer/pages/findings/overview/nextPlace.ts'

// 0 1 2
// 3   4
//   5
const places = [...[0, 1, 2].map((x) => ({ x, y: 0 })), ...[0, 2].map((x) => ({ x, y: 1 })), { x: 1, y: 5 }].map(
  (place) => ({ ...place, width: 1, height: 1 }),
)
const lead = (key: string, from: number) => nextPlace(key, from, places)

it('moves along a row and stops at its ends', () => {
  expect([lead('ArrowRight', 0), lead('ArrowRight', 2), lead('ArrowLeft', 1), lead('ArrowLeft', 3)]).toEqual([
    1, 2, 0, 3,
  ])
  expect([lead('Home', 2), lead('End', 0), lead('End', 3)]).toEqual([0, 2, 4])
})
it('moves to the next row, to the nearest place in it, also over a gap', () => {
  expect([lead('ArrowDown', 0), lead('ArrowDown', 2), lead('ArrowDown', 4), lead('ArrowDown', 5)]).toEqual([3, 4, 5, 5])
  expect([lead('ArrowUp', 5), lead('ArrowUp', 4), lead('ArrowUp', 1)]).toEqual([3, 2, 1])
})
it('leaves other keys alone, and what has no place', () => {
  expect([lead('Enter', 0), lead('w', 0), lead('ArrowDown', Number.NaN)]).toEqual([undefined, undefined, undefined])
})
