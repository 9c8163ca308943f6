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
