import { describe, expect, it } from 'vitest'
import { createSampleInterval } from '#domain/signal/stream/time/sampleInterval.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

function missingAt(times: readonly number[]) {
  const interval = createSampleInterval()
  interval.learn(Float64Array.from(times.slice(0, 9)), 9)
  return { missing: times.map((t) => interval.push(t)), interval }
}

const even = (count: number, stepS: number, from = 0) => Array.from({ length: count }, (_, i) => from + i * stepS)

describe('the usual interval', () => {
  it('counts what a longer step hides, also among the samples that taught it', () => {
    const times = even(60, 0.01).filter((_, i) => i !== 3 && (i < 40 || i > 44))
    const { missing, interval } = missingAt(times)
    expect(missing.filter((n) => n > 0)).toEqual([1, 5])
    expect(interval.missing()).toBe(6)
    expect(interval.meanS()).toBeCloseTo(0.01, 12)
  })

  it('does not take jitter of 30 % for gaps', () => {
    const times = even(500, 0.01).map((t, i) => t + 0.003 * ((i * 7) % 3 === 0 ? 1 : 0))
    expect(missingAt(times).interval.missing()).toBe(0)
  })

  it('learns a new rate when it lasts', () => {
    const times = [...even(50, 0.01), ...even(200, 0.1, 0.6)]
    const { missing, interval } = missingAt(times)
    expect(interval.usualS()).toBeCloseTo(0.1, 6)
    expect(missing.slice(80).every((n) => n === 0)).toBe(true)
  })

  it('knows nothing from one sample', () => {
    const interval = createSampleInterval()
    interval.learn(Float64Array.of(1), 1)
    expect(interval.push(1)).toBe(0)
    expect(interval.push(5)).toBe(0)
    expect(interval.usualS()).toBeNaN()
  })
})

describe('a step of the stream', () => {
  /** Learnt from steps of 10 ms; then steps of so many times that. */
  function after(...ratios: readonly number[]) {
    return afterSteps(0.01, ratios)
  }
  function afterSteps(usualS: number, ratios: readonly number[]) {
    const interval = createSampleInterval()
    interval.learn(Float64Array.from(even(9, usualS)), 9)
    let timeS = 0
    interval.push(timeS)
    const missing = ratios.map((ratio) => {
      timeS += usualS * ratio
      return interval.push(timeS)
    })
    return { interval, missing, usual: interval.usualS() / usualS }
  }

  it('hides samples from 1.75 usual ones on, as many as fit', () => {
    expect(limitOf((ratio) => after(ratio).missing[0]! > 0, 1.2, 3)).toBeCloseTo(1.75, 4)
    expect(afterSteps(1, [1.75]).missing).toEqual([0])
    expect([1.8, 2.4, 2.6, 10.4].map((ratio) => after(ratio).missing[0])).toEqual([1, 1, 2, 9])
    expect(after(10.4, 1, 3).interval.missing()).toBe(11)
  })

  it('teaches by a 64th of what it differs by, from 0.4 to 1.6 usual ones', () => {
    expect(after(1.32).usual).toBeCloseTo(1 + 0.32 / 64, 9)
    expect(after(0.5, 1).usual).toBeCloseTo((1 - 0.5 / 64) * (63 / 64) + 1 / 64, 9)
    expect(limitOf((ratio) => after(ratio).usual > 1, 1.2, 3)).toBeCloseTo(1.6, 4)
    expect(limitOf((ratio) => after(ratio).usual < 1, 0.1, 0.9)).toBeCloseTo(0.4, 4)
    expect(afterSteps(1, [0.4]).usual).toBeLessThan(1)
    expect(afterSteps(1, [1.6]).usual).toBeGreaterThan(1)
  })

  it('counts for the mean where it hides nothing', () => {
    expect(after(1.7, 0.3, 1, 5).interval.meanS() / 0.01).toBeCloseTo(1, 9)
    expect(after().interval.meanS()).toBeCloseTo(0.01, 9)
    // A time that comes twice is no step.
    expect(after(1.2, 0, 1.4).interval.meanS() / 0.01).toBeCloseTo(1.3, 9)
  })

  it('is the usual one where nine in a row are alike, and the middle one of them then', () => {
    expect(after(...Array(8).fill(3)).usual).toBe(1)
    expect(after(...Array(9).fill(3)).usual).toBeCloseTo(3, 9)
    expect(after(...Array(8).fill(3), 1, ...Array(8).fill(3)).usual).toBeCloseTo(1, 9)
    expect(after(...Array(9).fill(3), ...Array(8).fill(9)).usual).toBeCloseTo(3, 9)
    expect(after(...Array(8).fill(3.2), 2).usual).toBe(1)
    expect(afterSteps(1, [...Array<number>(8).fill(2), 3]).usual).toBe(2)
    expect(after(2.2, 3.2, 2.9, 2.5, 2.8, 3.1, 2.3, 3, 2.7).usual).toBeCloseTo(2.8, 9)
    // The longest may be half as long again as the shortest.
    expect(limitOf((longest) => after(...Array(8).fill(2), longest).usual > 1.5, 2.5, 4)).toBeCloseTo(3, 4)
  })

  it('is learnt as the lower median of the first ones', () => {
    const interval = createSampleInterval()
    interval.learn(Float64Array.of(0, 1, 2, 4, 7), 5)
    expect(interval.usualS()).toBe(1)
    interval.learn(Float64Array.of(0, 2, 7), 3)
    expect(interval.usualS()).toBe(2)
    interval.learn(Float64Array.of(0, 3), 2)
    expect(interval.usualS()).toBe(3)
    interval.learn(Float64Array.of(0, 0), 2)
    expect(interval.usualS()).toBe(3)
  })

  it('is told where blocks end, before which samples are missing', () => {
    const interval = createSampleInterval()
    interval.learn(Float64Array.from(even(9, 1)), 9)
    const timeS = Float64Array.of(0, 1, 2, 5, 6, 8, 9)
    expect(interval.take(timeS, 0, 7)).toBe(4)
    expect([interval.missingBefore(), interval.lastS()]).toEqual([2, 5])
    expect(interval.take(timeS, 4, 7)).toBe(6)
    expect(interval.missingBefore()).toBe(1)
    expect(interval.take(timeS, 6, 7)).toBe(7)
    expect(interval.missingBefore()).toBe(0)
  })
})

it('is known from a single good step, and nothing is counted while nothing is known', () => {
  const interval = createSampleInterval()
  expect(interval.missingBefore()).toBe(0)
  interval.learn(Float64Array.of(0, 0.25), 2)
  interval.push(0)
  interval.push(0.3)
  expect(interval.meanS()).toBeCloseTo(0.3, 12)
  interval.push(0.5)
  expect(interval.meanS()).toBeCloseTo(0.25, 12)
})
