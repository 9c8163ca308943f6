import { expect, test } from 'vitest'
import { LoadBuilder } from '#acquisition/virtual/loading/loadSegment.ts'
import { meanRate } from '#acquisition/virtual/loading/meanRate.ts'

test('is the slope of a straight loading', () => {
  const load = new LoadBuilder()
  load.drive(10, 250)
  expect(meanRate(load.segments, 2500)).toBeCloseTo(250, 6)
})

test('goes from where the load first reaches 10 % to where it first reaches 90 %, whatever lies between', () => {
  const load = new LoadBuilder()
  // 100 N a second to 500 N, five seconds still, then 500 N a second to 1000 N: 100 N at 1 s, 900 N at 10.8 s.
  load.drive(5, 100)
  load.drive(5, 0)
  load.drive(1, 500)
  expect(meanRate(load.segments, 1000)).toBeCloseTo(800 / 9.8, 6)
})

test('refuses a force that the load never reaches', () => {
  const load = new LoadBuilder()
  load.drive(1, 100)
  expect(() => meanRate(load.segments, 1000)).toThrow(RangeError)
})
