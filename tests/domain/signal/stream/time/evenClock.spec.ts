import { describe, expect, it } from 'vitest'
import { createEvenClock, type EvenClock } from '#domain/signal/stream/time/evenClock.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

/** A clock that has seen readings arrive every `intervalS` for so long, the first at 10 s. */
function running(intervalS: number, lengthS: number): { clock: EvenClock; nowS: number } {
  const clock = createEvenClock()
  const readings = Math.round(lengthS / intervalS)
  for (let i = 0; i <= readings; i++) clock.arrive(1, 10 + i * intervalS)
  return { clock, nowS: 10 + readings * intervalS }
}

describe('an even clock', () => {
  it('learns for a second and four readings, the mean of them', () => {
    const learnt = (intervalS: number) => {
      const clock = createEvenClock()
      for (let i = 0; ; i++) {
        clock.arrive(1, 100 + i * intervalS)
        if (!Number.isNaN(clock.stepS())) return i
      }
    }
    expect([2, 0.5, 0.125].map(learnt)).toEqual([4, 4, 8])
    expect(running(0.125, 1).clock.stepS()).toBe(0.125)
    const uneven = createEvenClock()
    for (const [intervals, arrivalS] of [
      [3, 5],
      [2, 5.5],
      [0, 5.7],
      [4, 6.5],
    ] as const)
      uneven.arrive(intervals, arrivalS)
    // Six intervals in 1.5 s; what arrived first waited for nobody.
    expect(uneven.stepS()).toBe(0.25)
    expect(uneven.intervalS()).toBe(0.25)
    expect(uneven.jitterS()).toBe(0)
  })

  it('goes on evenly while readings come evenly', () => {
    const { clock, nowS } = running(0.125, 20)
    expect(clock.arrive(2, nowS + 0.25)).toBe(0)
    expect(clock.stepS()).toBeCloseTo(0.125, 9)
    expect(clock.jitterS()).toBeCloseTo(0, 9)
  })

  it('jumps over a silence of more than a second that fewer than half of its readings follow', () => {
    const jump = (intervals: number, silenceS: number) => {
      const { clock, nowS } = running(0.125, 20)
      return clock.arrive(intervals, nowS + silenceS)
    }
    expect(limitOf((silenceS) => jump(1, silenceS) > 0, 0.5, 3)).toBeCloseTo(1, 3)
    expect(jump(1, 3)).toBeCloseTo(3 - 0.125, 9)
    // Three seconds hold 24 readings.
    expect(jump(11, 3)).toBeCloseTo(3 - 11 * 0.125, 9)
    expect(jump(13, 3)).toBe(0)
  })

  it('jumps after an interruption however short, but never back', () => {
    const { clock, nowS } = running(0.125, 20)
    clock.interrupted()
    expect(clock.arrive(1, nowS + 0.5)).toBeCloseTo(0.375, 9)
    expect(clock.arrive(1, nowS + 0.625)).toBe(0)
    clock.interrupted()
    expect(clock.arrive(4, nowS + 0.7)).toBe(0)
    expect(clock.arrive(1, nowS + 1.2)).toBe(0)
  })

  it('jumps by what all arrivals of half a second are late, from 0.1 s and three intervals on', () => {
    /** Readings that come later from one moment on: the jump that follows, and how many readings later. */
    const late = (byS: number) => {
      const { clock, nowS } = running(1 / 64, 20)
      for (let i = 1; i <= 80; i++) {
        const jumpS = clock.arrive(1, nowS + i / 64 + byS)
        if (jumpS > 0) return { jumpS, i }
      }
      return null
    }
    expect(Math.abs(limitOf((byS) => late(byS) !== null, 0.05, 0.4) - (0.1 + 3 / 64))).toBeLessThan(0.002)
    const { jumpS, i } = late(0.3)!
    expect(Math.abs(jumpS - 0.3)).toBeLessThan(0.002)
    // The half second that was under way holds arrivals that were not late.
    expect(i).toBeGreaterThan(32)
    expect(i).toBeLessThanOrEqual(66)
  })

  it('is pulled to the line within two seconds, and bent by a thousandth at most, more while it is young', () => {
    /** Readings that come a little later from one moment on: the step once they are what the line goes by. */
    const bentBy = (afterS: number, byS: number) => {
      const { clock, nowS } = running(1 / 64, afterS)
      let steepest = 0
      for (let i = 1; i <= 64 * 2; i++) {
        clock.arrive(1, nowS + i / 64 + byS)
        steepest = Math.max(steepest, clock.stepS() / clock.intervalS() - 1)
      }
      return steepest
    }
    // After 60 s a thousandth; a line through thirty seconds is moved by a tenth of a small delay at first.
    expect(bentBy(60, 0.1)).toBeCloseTo(0.001, 6)
    expect(bentBy(60, 0.003)).toBeLessThan(0.0009)
    expect(bentBy(60, 0.003)).toBeGreaterThan(1e-5)
    // 0.04 over the four or five seconds since the first reading.
    expect(bentBy(3, 0.1)).toBeGreaterThan(0.04 / 5.1)
    expect(bentBy(3, 0.1)).toBeLessThan(0.04 / 3.9)
  })

  it('knows its jitter as the mean square of what arrivals differ by, over about 64 of them', () => {
    const { clock, nowS } = running(1 / 64, 20)
    clock.arrive(1, nowS + 1 / 64 + 0.032)
    expect(clock.jitterS()).toBeCloseTo(0.032 / 8, 4)
    clock.arrive(1, nowS + 2 / 64)
    expect(clock.jitterS()).toBeCloseTo((0.032 / 8) * Math.sqrt(63 / 64), 4)
  })
})

describe('the measures of an even clock', () => {
  it('tells of no jump before it has learnt', () => {
    const clock = createEvenClock()
    expect([clock.arrive(0, 1), clock.arrive(1, 2), clock.arrive(1, 2.5), clock.arrive(0, 2.6)]).toEqual([0, 0, 0, 0])
  })

  it('watches for half a second, from the first reading after a jump', () => {
    const { clock, nowS } = running(1 / 64, 20)
    const jumps: number[] = []
    let lateS = 0.3
    for (let i = 1; i <= 200; i++)
      if (clock.arrive(1, nowS + i / 64 + lateS) > 0) {
        jumps.push(i)
        lateS += 0.3
      }
    expect(jumps.length).toBeGreaterThan(2)
    expect(jumps.slice(1).map((at, k) => at - jumps[k]!)).toEqual(jumps.slice(1).map(() => 33))
  })

  it('bends by 0.04 over its age at once when the line moves, or by half of what it is behind in a second', () => {
    const firstBend = (afterS: number, byS: number) => {
      const { clock, nowS } = running(1 / 64, afterS)
      for (let i = 1; i <= 64 * 3; i++) {
        clock.arrive(1, nowS + i / 64 + byS)
        const bend = clock.stepS() / clock.intervalS() - 1
        if (Math.abs(bend) > 1e-9) return { bend, ageS: nowS + i / 64 + byS - 10 }
      }
      throw new RangeError('the clock was never bent')
    }
    const young = firstBend(3, 0.1)
    expect(young.bend * young.ageS).toBeCloseTo(0.04, 6)
    // The end of a line through thirty points follows the last of them by (4 · 30 − 2) / (30 · 31) of 3 ms, and a little more up to
    // a second further on.
    const old = firstBend(60, 0.003)
    expect(old.bend / ((118 / 930) * 0.003)).toBeGreaterThan(0.5)
    expect(old.bend / ((118 / 930) * 0.003)).toBeLessThan(0.6)
  })
})
