import { describe, expect, it } from 'vitest'
import { createStreamTime } from '#domain/signal/stream/time/streamTime.ts'

const learningReadings = 16

/** A stream that has learnt its usual step of 100 µs. */
function started(stepS = 100e-6) {
  const gaps: [number, number][] = []
  const stream = createStreamTime((timeS, missing) => gaps.push([timeS, missing]))
  stream.first()
  for (let i = 1; i < learningReadings; i++) stream.advance(stream.exactS() + stepS, Number.NaN)
  return { stream, gaps }
}

describe('stream time', () => {
  it.each([3000, 7500, 10_040, 30_000])(
    'keeps the rate of an even clock of %i Hz, whose step is no whole microsecond',
    (rateHz) => {
      const { stream } = started(1 / rateHz)
      for (let i = learningReadings; i < 100_000; i++) {
        const timeS = stream.advance(stream.exactS() + 1 / rateHz, 0)
        if (i % 997 > 0) continue
        expect(Math.abs(timeS - i / rateHz)).toBeLessThan(0.6e-6)
        expect(timeS * 1e6).toBeCloseTo(Math.round(timeS * 1e6), 6)
      }
    },
  )

  it('rises by a microsecond at least', () => {
    const { stream } = started()
    const last = stream.lastS()
    expect(stream.advance(last - 1, 0)).toBeCloseTo(last + 1e-6, 9)
  })

  it('tells of missing samples by the step, or as it is told', () => {
    const { stream, gaps } = started()
    const last = stream.lastS()
    stream.advance(last + 500e-6, Number.NaN)
    stream.advance(last + 600e-6, 7)
    expect(gaps.map(([, missing]) => missing)).toEqual([4, 7])
    expect(stream.missing()).toBe(11)
  })
})

describe('what is known of the steps', () => {
  it('is nothing before sixteen readings, and the lower median of theirs then', () => {
    const stream = createStreamTime(() => {})
    stream.first()
    for (let i = 1; i < 15; i++) stream.advance(i * 1e-3, 0)
    expect(stream.usualS()).toBeNaN()
    stream.advance(15e-3, 0)
    expect(stream.usualS()).toBeCloseTo(1e-3, 9)
  })

  it('is a jitter averaged over 256 steps, of those that hide nothing', () => {
    const { stream } = started(1e-3)
    expect(stream.jitterS()).toBe(0)
    stream.advance(stream.lastS() + 1.32e-3, Number.NaN)
    // The usual step has followed by a 64th of the difference when the step is compared with it.
    const deviation = 0.32e-3 * (63 / 64)
    expect(stream.jitterS()).toBeCloseTo(deviation / 16, 9)
    const before = stream.jitterS()
    stream.advance(stream.lastS() + 5e-3, Number.NaN)
    stream.advance(stream.lastS() + 1e-3, 3)
    expect(stream.jitterS()).toBe(before)
  })

  it('begins at zero, and again when it is asked to', () => {
    const { stream } = started(1e-3)
    expect(stream.lastS()).toBeCloseTo(15e-3, 9)
    expect(stream.first()).toBe(0)
    expect([stream.lastS(), stream.exactS()]).toEqual([0, 0])
  })

  it('counts no gap where it is told that none is there', () => {
    const { stream, gaps } = started(1e-3)
    stream.advance(stream.lastS() + 9e-3, 0)
    expect(gaps).toEqual([])
    stream.advance(stream.lastS() + 1e-3, 1)
    expect(gaps).toHaveLength(1)
  })
})

it('learns the usual step anew when it is asked to, and counts nothing missing until it knows', () => {
  const { stream, gaps } = started(1e-3)
  stream.advance(stream.lastS() + 1.32e-3, 0)
  stream.relearn()
  expect([stream.usualS(), stream.jitterS()]).toEqual([Number.NaN, 0])
  const lastS = stream.lastS()
  for (let i = 1; i <= 16; i++) {
    expect(stream.usualS()).toBeNaN()
    stream.advance(lastS + i * 0.05, Number.NaN)
  }
  expect(stream.usualS()).toBeCloseTo(0.05, 9)
  expect(gaps).toEqual([])
  stream.advance(stream.lastS() + 0.1, Number.NaN)
  expect(gaps.map(([, missing]) => missing)).toEqual([1])
})

it('forgets old jitter by a 256th with every step', () => {
  const { stream } = started(1e-3)
  stream.advance(stream.lastS() + 1.32e-3, Number.NaN)
  const before = stream.jitterS()
  for (let i = 0; i < 10; i++) stream.advance(stream.lastS() + stream.usualS(), Number.NaN)
  expect(stream.jitterS() / before).toBeCloseTo((255 / 256) ** 5, 2)
})
