import { describe, expect, it } from 'vitest'
import {
  curvedCharacteristic,
  readingCounts,
  straightCharacteristic,
} from '#acquisition/virtual/transferCharacteristic.ts'

describe('transfer characteristic of the virtual load cell', () => {
  it('is zero offset plus force over scale when it is straight', () => {
    // 48,213 + 1,000 N / 0.01 N per count, by hand.
    expect(readingCounts(straightCharacteristic, 1000, 1000)).toBe(148_213)
    expect(readingCounts(straightCharacteristic, -10, 0)).toBe(47_213)
  })

  it('bends most at half capacity, by the stated share of capacity, and not at all at zero and capacity', () => {
    const bend = (forceN: number) =>
      (readingCounts(curvedCharacteristic, forceN, forceN) - readingCounts(straightCharacteristic, forceN, forceN)) *
      0.01
    expect(bend(0)).toBeCloseTo(0, 9)
    expect(bend(25_000)).toBeCloseTo(0, 6)
    expect(bend(12_500)).toBeCloseTo(0.0008 * 25_000, 6)
  })

  it('reads higher while load falls, by the stated share of the highest force at half of it', () => {
    const rising = readingCounts(curvedCharacteristic, 4000, 4000)
    const falling = readingCounts(curvedCharacteristic, 4000, 8000)
    expect((falling - rising) * 0.01).toBeCloseTo(0.0005 * 8000, 6)
  })
})
