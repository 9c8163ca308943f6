import { describe, expect, test } from 'vitest'
import { movingAverage } from '#domain/signal/filters/movingAverage.ts'

const force = Float64Array.from({ length: 24 }, (_, i) => (i * i * 7) % 23)
const every = (intervalS: number, count = 24) => Float64Array.from({ length: count }, (_, i) => i * intervalS)

describe('movingAverage', () => {
  // numpy 2.4.6: numpy.convolve([(i*i*7) % 23 for i in range(24)], numpy.ones(5) / 5, mode='valid')
  const convolved = [
    9.8, 12.6, 15.6, 18.8, 17.6, 16.6, 15.8, 15.2, 14.8, 14.6, 14.6, 14.8, 15.2, 15.8, 16.6, 17.6, 18.8,
  ]
  test.each([0.1, 0.0125, 0.001])('over 4 intervals of %d s is numpy.convolve with five equal weights', (intervalS) => {
    const smoothed = movingAverage({ timeS: every(intervalS), force }, 4 * intervalS)
    for (const [i, value] of convolved.entries()) expect(smoothed[i + 2]).toBeCloseTo(value, 12)
  })

  test('stays centred at the ends: the mean of three, and the end as it is', () => {
    const smoothed = movingAverage({ timeS: every(0.1), force }, 0.4)
    // By hand: 0; (0 + 7 + 5) / 3
    expect(smoothed[0]).toBe(0)
    expect(smoothed[1]).toBeCloseTo(4, 12)
    expect(smoothed[22]).toBeCloseTo(4, 12)
    expect(smoothed[23]).toBe(0)
  })

  test('leaves a ramp and a constant as they are', () => {
    const timeS = every(0.0125, 400)
    const ramp = timeS.map((time) => 100 + 250 * time)
    for (const [i, value] of movingAverage({ timeS, force: ramp }, 0.3).entries())
      expect(value).toBeCloseTo(ramp[i]!, 9)
    expect(movingAverage({ timeS, force: new Float64Array(400).fill(1 / 3) }, 0.3).every((y) => y === 1 / 3)).toBe(true)
  })

  test('goes by time where samples are uneven', () => {
    const timeS = Float64Array.of(0, 1, 2, 2.5, 3, 4, 5, 6, 7, 8, 9, 10)
    const values = Float64Array.of(1, 2, 3, 40, 5, 6, 7, 8, 9, 10, 11, 12)
    const smoothed = movingAverage({ timeS, force: values }, 2)
    // By hand, samples from t - 1 to t + 1: at 2 s 1, 2, 2.5, 3; at 2.5 s 2, 2.5, 3.
    expect(smoothed[2]).toBeCloseTo((2 + 3 + 40 + 5) / 4, 12)
    expect(smoothed[3]).toBeCloseTo((3 + 40 + 5) / 3, 12)
  })

  test('is the same wherever the curve lies in time', () => {
    // Times and window are exact in binary.
    const timeS = every(0.125)
    const later = movingAverage({ timeS: timeS.map((time) => time + 4096), force }, 0.5)
    expect(later).toEqual(movingAverage({ timeS, force }, 0.5))
  })

  test('takes a sample for outside that is so by a two thousandth of an interval', () => {
    const timeS = Float64Array.of(0, 0.1, 0.2, 0.3, 0.40005, 0.5, 0.6, 0.7, 0.8, 0.9, 1)
    const values = timeS.map((_, i) => (i === 4 ? 90 : 0))
    // At 0.3 s the window ends at 0.4 s; at 0.5 s it begins there.
    const smoothed = movingAverage({ timeS, force: values }, 0.2)
    expect(smoothed[3]).toBe(0)
    expect(smoothed[5]).toBeCloseTo(30, 12)
  })

  test('never reaches over a gap', () => {
    const timeS = every(0.1, 40).map((time, i) => (i < 20 ? time : time + 0.5))
    const steps = Float64Array.from({ length: 40 }, (_, i) => (i < 20 ? 10 : 50))
    expect(movingAverage({ timeS, force: steps }, 0.6)).toEqual(steps)
  })

  test('keeps its digits over a long curve that was high once', () => {
    const count = 200_000
    const high = Float64Array.from({ length: count }, (_, i) => (i < count / 2 ? 1e9 + (i % 7) / 3 : 0.1))
    const smoothed = movingAverage({ timeS: every(0.001, count), force: high }, 0.05)
    expect(smoothed[count - 1000]).toBe(0.1)
  })

  test('lowers the peak of a ramp and drop, so it is never for the peak', () => {
    const ramp = Float64Array.from({ length: 24 }, (_, i) => (i <= 18 ? 100 * i : 0))
    const smoothed = movingAverage({ timeS: every(0.0125), force: ramp }, 0.05)
    expect(smoothed.reduce((most, value) => Math.max(most, value))).toBeLessThan(1800)
  })

  test('refuses a window that is none, and takes a curve that is none', () => {
    for (const bad of [0, -1, Number.NaN])
      expect(() => movingAverage({ timeS: every(1), force }, bad)).toThrow(RangeError)
    expect(movingAverage({ timeS: every(1, 0), force: every(1, 0) }, 1)).toHaveLength(0)
    expect(movingAverage({ timeS: every(1, 1), force: Float64Array.of(5) }, 1)).toEqual(Float64Array.of(5))
  })
})
