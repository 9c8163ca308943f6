import { expect, it } from 'vitest'
import { createFirstSamples } from '#domain/signal/stream/firstSamples.ts'

/** How many samples at a rate belong to the first ones. */
function countAt(rateHz: number): number {
  const head = createFirstSamples()
  const timeS = Float64Array.from({ length: 10_000 }, (_, i) => i / rateHz)
  const next = head.take(timeS, timeS, timeS, 0, timeS.length)
  expect([head.complete(), head.count()]).toEqual([true, next])
  return next
}

it('are 16 at least, over 0.2 s, and no more than fit', () => {
  expect([10, 80, 1000, 100_000].map(countAt)).toEqual([16, 17, 201, 4096])
})

it('are the same however they are cut, and take nothing more', () => {
  const head = createFirstSamples()
  const timeS = Float64Array.from({ length: 20 }, (_, i) => i / 10)
  const force = timeS.map((t) => 7 * t)
  expect(head.take(timeS, force, timeS, 0, 3)).toBe(3)
  expect(head.complete()).toBe(false)
  expect(head.take(timeS, force, timeS, 3, 20)).toBe(16)
  expect(head.take(timeS, force, timeS, 16, 20)).toBe(16)
  expect(head.force.subarray(0, 16)).toEqual(force.subarray(0, 16))
})
