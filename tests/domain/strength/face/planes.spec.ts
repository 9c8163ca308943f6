import { expect, it } from 'vitest'
import { planeOf } from '#domain/strength/face/planes.ts'

it('asks for the value of each pixel by its index, row by row', () => {
  expect([...planeOf({ width: 3, height: 2 }, (i) => 10 * i).values]).toEqual([0, 10, 20, 30, 40, 50])
})
