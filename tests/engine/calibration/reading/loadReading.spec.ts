import { expect, test } from 'vitest'
import type { HeldReadings } from '#engine/calibration/reading/loadHold.ts'
import { createLoadReading } from '#engine/calibration/reading/loadReading.ts'
import { createSteppedClock } from '#engine/core/steppedClock.ts'

function reader() {
  const clock = createSteppedClock(0)
  const told: string[] = []
  const found: (HeldReadings | null)[] = []
  const reading = createLoadReading(clock, () => {})
  let sample = 0
  return {
    reading,
    told,
    found,
    begin: (holdS: number | null) =>
      reading.begin(
        { averageS: 1, steadyWithinS: 10, holdS },
        {
          read: () => told.push('read'),
          held(readings) {
            told.push('held')
            found.push(readings)
          },
          over: () => told.push('over'),
          failed: ({ code }) => told.push(code),
        },
      ),
    /** Ten readings a second, two counts apart, which climb by 1 a second from their start. */
    play(seconds: number, level = 500, climb = 0) {
      for (let i = 0; i < seconds * 10; i++, sample++) {
        reading.push(sample / 10, level + (climb * sample) / 10 + (sample % 2))
        clock.step(0.1)
      }
    },
  }
}

test('reads a load once it is steady, and is ready for the next', () => {
  const { reading, told, begin, play } = reader()
  expect(reading.phase()).toBeNull()
  begin(null)
  expect(reading.phase()).toBe('waiting-for-steady')
  play(2.5)
  expect(reading.phase()).toBe('averaging')
  play(1.5)
  expect(told).toEqual(['read', 'over'])
  expect(reading.phase()).toBeNull()
})

test('holds a load after it was read, and tells what it read early and late', () => {
  const { reading, told, found, begin, play } = reader()
  begin(60)
  play(5)
  expect(told).toEqual(['read'])
  expect(reading.phase()).toBe('holding')
  expect(() => reading.refuseWhileReading()).toThrow(/held for the creep/)
  play(60)
  expect(told).toEqual(['read', 'held', 'over'])
  expect(found).toEqual([expect.objectContaining({ fromS: 30, toS: 60 })])
})

test('says of a stop whether the load had been read already', () => {
  const { reading, told, begin, play } = reader()
  begin(60)
  expect(() => begin(null)).toThrow(/being taken/)
  play(1)
  expect(reading.stop()).toBe(false)
  begin(60)
  play(5)
  expect(reading.stop()).toBe(true)
  play(70)
  expect(told).toEqual(['read'])
})

test('gives up a load that never stands still, its hold as well', () => {
  const { reading, told, begin, play } = reader()
  begin(60)
  play(20, 500, 50)
  expect(told).toEqual(['not-stable'])
  expect(reading.phase()).toBeNull()
})
