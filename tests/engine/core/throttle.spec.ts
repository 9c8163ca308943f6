import { expect, it } from 'vitest'
import { throttle } from '#engine/core/throttle.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'

it('lets the first through at once and one in each interval after', async () => {
  const clock = movedClock()
  const times: number[] = []
  const { ask, stop } = throttle(clock, 0.1, () => times.push(clock.nowS()))
  for (let i = 0; i < 50; i++) {
    ask()
    await clock.move(0.01)
  }
  await clock.move(1)
  expect(times.length).toBe(6)
  expect(times[0]).toBe(0)
  for (let i = 1; i < times.length; i++) expect(times[i]! - times[i - 1]!).toBeGreaterThanOrEqual(0.1 - 1e-9)
  ask()
  ask()
  stop()
  await clock.move(1)
  expect(times.length).toBe(7)
})
