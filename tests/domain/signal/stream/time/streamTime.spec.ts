import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createStreamTime } from '#domain/signal/stream/streamTime.ts'

/** A stream that has learnt its usual step of 100 µs. */
function started(stepS = 100e-6) {
  const gaps: [number, number][] = []
  const stream = createStreamTime((timeS, missing) => gaps.push([timeS, missing]))
  stream.first()
  while (!stream.learnt()) stream.advance(stream.exactS() + stepS, null)
  return { stream, gaps }
}

describe('stream time', () => {
  it.each([3000, 7500, 10_040, 30_000])(
    'keeps the rate of an even clock of %i Hz, whose step is no whole microsecond',
    (rateHz) => {
      for (const oneByOne of [true, false]) {
        const { stream } = started(1 / rateHz)
        const from = 16
        const timeS = new Float64Array(100_000)
        if (oneByOne)
          for (let i = from; i < timeS.length; i++) timeS[i] = stream.advance(stream.exactS() + 1 / rateHz, 0)
        else expect(stream.takeEven(1 / rateHz, from, timeS.length, timeS)).toBe(timeS.length)
        for (let i = from; i < timeS.length; i += 997) {
          expect(Math.abs(timeS[i]! - i / rateHz)).toBeLessThan(0.6e-6)
          expect(timeS[i]! * 1e6).toBeCloseTo(Math.round(timeS[i]! * 1e6), 6)
        }
        expect(Math.abs(stream.lastS() - (timeS.length - 1) / rateHz)).toBeLessThan(0.6e-6)
      }
    },
  )

  it('rises by a microsecond at least', () => {
    const { stream } = started()
    const last = stream.lastS()
    expect(stream.advance(last - 1, 0)).toBeCloseTo(last + 1e-6, 9)
  })

  it('hands out the same times for a run of ticks as tick by tick, and stops where they do not go on', () => {
    const random = createRandom(9)
    for (const numbered of [true, false]) {
      const deviceUs = new Float64Array(500)
      const sequence = new Float64Array(500).fill(Number.NaN)
      for (let i = 0, us = 0; i < 500; i++) {
        us += i === 300 ? 900 : random.wholeBetween(80, 120)
        deviceUs[i] = us
        if (numbered) sequence[i] = i + 1
      }
      const { stream, gaps } = started()
      const one = started()
      const run = { deviceUs, sequence, lastUs: 0, lastSequence: numbered ? 0 : Number.NaN }
      const timeS = new Float64Array(500)
      expect(stream.takeTicks(run, 0, 500, timeS)).toBe(300)
      expect([run.lastUs, run.lastSequence]).toEqual([deviceUs[299], numbered ? 300 : Number.NaN])
      for (let i = 0; i < 300; i++) {
        const stepS = (deviceUs[i]! - (i === 0 ? 0 : deviceUs[i - 1]!)) / 1e6
        expect(one.stream.advance(one.stream.lastS() + stepS, numbered ? 0 : null)).toBe(timeS[i])
      }
      // Steps of counters and steps of times differ by the rounding of a double.
      expect(stream.lastS()).toBe(one.stream.lastS())
      expect(stream.usualS()).toBeCloseTo(one.stream.usualS(), 12)
      expect(stream.jitterS()).toBeCloseTo(one.stream.jitterS(), 12)
      expect(stream.missing()).toBe(0)
      expect(gaps).toEqual([])
    }
  })

  it('takes no run out of sequence', () => {
    const { stream } = started()
    const run = {
      deviceUs: Float64Array.of(100, 200, 300),
      sequence: Float64Array.of(1, 2, 4),
      lastUs: 0,
      lastSequence: 0,
    }
    expect(stream.takeTicks(run, 0, 3, new Float64Array(3))).toBe(2)
  })

  it('tells of missing samples by the step, or as it is told', () => {
    const { stream, gaps } = started()
    const last = stream.lastS()
    stream.advance(last + 500e-6, null)
    stream.advance(last + 600e-6, 7)
    expect(gaps.map(([, missing]) => missing)).toEqual([4, 7])
    expect(stream.missing()).toBe(11)
  })
})
