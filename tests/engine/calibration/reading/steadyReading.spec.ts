import { expect, test } from 'vitest'
import type { Trouble } from '#contract/errors.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { type AveragedReading, createSteadyReading } from '#engine/calibration/reading/steadyReading.ts'
import { createSteppedClock } from '#engine/core/steppedClock.ts'

function reader(change: { averageS?: number; steadyWithinS?: number } = {}) {
  const clock = createSteppedClock(0)
  const told: { done: AveragedReading[]; failed: Trouble[] } = { done: [], failed: [] }
  const reading = createSteadyReading({
    clock,
    averageS: 2,
    steadyWithinS: 10,
    ...change,
    changed() {},
    done: (averaged) => told.done.push(averaged),
    failed: (trouble) => told.failed.push(trouble),
  })
  const noise = createRandom(4)
  let sample = 0
  /** Samples at 50 Hz with noise of SD 1, the level a function of time. */
  function play(seconds: number, level: (timeS: number) => number) {
    for (let i = 0; i < seconds * 50; i++, sample++) {
      reading.push(sample / 50, level(sample / 50) + noise.normal())
      clock.step(1 / 50)
    }
  }
  return { reading, told, clock, play }
}

test('waits out the swing of a weight, then averages the window', () => {
  const { told, play } = reader()
  play(8, (timeS) => 500 + 100 * Math.exp(-timeS / 0.4) * Math.sin(12 * timeS))
  expect(told.failed).toEqual([])
  const [{ mean, sd, count }] = told.done as [AveragedReading]
  // 2 s at 50 Hz.
  expect(count).toBe(100)
  expect(Math.abs(mean - 500)).toBeLessThan(5 / Math.sqrt(100))
  expect(sd).toBeGreaterThan(0.8)
  expect(sd).toBeLessThan(1.2)
})

test('begins to wait again when something disturbs the window', () => {
  const { reading, told, play } = reader()
  play(3, () => 500)
  expect(reading.averaging()).toBe(true)
  play(0.5, (timeS) => 500 + 60 * Math.sin(40 * timeS))
  play(1, () => 500)
  expect(told.done).toEqual([])
  play(6, () => 500)
  expect(told.done).toHaveLength(1)
})

test('takes no mean that a lone glitch has spoilt', () => {
  const { told, play } = reader()
  play(3, () => 500)
  play(0.02, () => 90_000)
  play(7, () => 500)
  expect(Math.abs(told.done[0]!.mean - 500)).toBeLessThan(0.5)
})

test('gives up a reading that goes on rising, with the reason', () => {
  const { told, play } = reader()
  play(15, (timeS) => 20 * timeS)
  expect(told.done).toEqual([])
  expect(told.failed).toMatchObject([
    { code: 'not-stable', message: 'The reading did not become steady within 10 s: the force is still rising.' },
  ])
})

test('says that nothing arrives when nothing does', () => {
  const { told, clock } = reader()
  clock.step(20)
  expect(told.failed).toMatchObject([{ code: 'not-connected', message: 'No reading has arrived for 10 s.' }])
})

test('tells nothing more once it was stopped', () => {
  const { reading, told, clock, play } = reader()
  play(1, () => 500)
  reading.stop()
  play(10, () => 500)
  clock.step(60)
  expect(told).toEqual({ done: [], failed: [] })
})
