import { describe, expect, it } from 'vitest'
import { createSampleInterval } from '#domain/signal/stream/time/sampleInterval.ts'

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
