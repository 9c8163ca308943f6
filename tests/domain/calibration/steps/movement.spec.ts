import { expect, test } from 'vitest'
import { movementOf, type PlacedReading } from '#domain/calibration/steps/movement.ts'

/** Readings of one run: force and mean each; SD 2 over 100 single readings, so 0.2 for a mean. */
const run = (...pairs: [number, number][]): PlacedReading[] =>
  pairs.map(([forceN, mean], index) => ({ index, run: 1, direction: 'up', forceN, mean, sd: 2, count: 100 }))
const newest = (readings: PlacedReading[], inverted = false) => movementOf(readings, readings.length - 1, inverted)

test('has nothing to say while the reading follows the load, up and down', () => {
  expect(newest(run([0, 0], [100, 1000], [200, 2000], [100, 1010]))).toEqual({ reversed: false, problem: null })
  expect(newest(run([0, 0]))).toEqual({ reversed: false, problem: null })
})

test('sees a cell that is wired in reverse, until the person agrees', () => {
  const readings = run([0, 0], [100, -1000])
  expect(newest(readings).reversed).toBe(true)
  expect(newest(readings).problem!.message).toMatch(/wired in reverse/)
  expect(newest(readings, true)).toEqual({ reversed: false, problem: null })
})

test('sees one step that moves against the others', () => {
  const { reversed, problem } = newest(run([0, 0], [100, 1000], [200, 2000], [300, 1500]))
  expect(reversed).toBe(false)
  expect(problem!.message).toBe('From one load to the next the reading moved the wrong way, from 2000.0 to 1500.0.')
})

test('calls a change below five standard errors none: 5 x sqrt(0.2^2 + 0.2^2) = 1.414', () => {
  expect(newest(run([0, 0], [100, 1000], [200, 1001.4])).problem!.message).toMatch(/did not move/)
  expect(newest(run([0, 0], [100, 1000], [200, 1001.5])).problem).toBeNull()
})

test('compares nothing across runs', () => {
  const readings = run([0, 0], [100, 1000], [0, 2])
  readings[2] = { ...readings[2]!, run: 2 }
  expect(newest(readings).problem).toBeNull()
})

test('calls a reading that is the same to the digit unmoved, and one cell that does not move is not wired in reverse', () => {
  const still = run([0, 7], [100, 7]).map((reading) => ({ ...reading, sd: 0 }))
  expect(newest(still)).toMatchObject({ reversed: false, problem: { message: expect.stringMatching(/did not move/) } })
})

test('compares nothing where the load is the same or the run another', () => {
  expect(newest(run([0, 0], [100, 1000], [100, 900])).problem).toBeNull()
  const readings = run([0, 0], [100, 1000], [0, 1500])
  readings[2] = { ...readings[2]!, run: 2 }
  expect(newest(readings).problem).toBeNull()
})

test('speaks of the newest reading alone, at whatever place it was read again', () => {
  const stray = run([0, 0], [100, 1000], [200, 500], [300, 3000], [400, 4000])
  expect(movementOf(stray, 4, false).problem).toBeNull()
  expect(movementOf(stray, 1, false).problem!.message).toMatch(/from 1000.0 to 500.0/)
  expect(movementOf(stray, 2, false).problem!.message).toMatch(/from 1000.0 to 500.0/)
})

test('takes upwards for the right way where as many readings go either way', () => {
  expect(movementOf(run([0, 0], [100, 1000], [200, 500]), 1, false).problem!.message).toMatch(/from 1000.0 to 500.0/)
})
