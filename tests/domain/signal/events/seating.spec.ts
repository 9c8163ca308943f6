import { describe, expect, it } from 'vitest'
import { seatingEndS } from '#domain/signal/events/seating.ts'

const sampled = (force: (timeS: number) => number, lengthS = 20) => {
  const timeS = Float64Array.from({ length: 200 }, (_, i) => (i * lengthS) / 200)
  return { timeS, force: timeS.map(force) }
}

/** Slope that grows evenly for `toeS`, then stays: a parabola and the line that touches its end. */
const toe = (toeS: number, slope: number) => (t: number) =>
  t < toeS ? (slope * t * t) / (2 * toeS) : slope * (t - toeS / 2)

describe('seating', () => {
  it.each([1.5, 2, 3])(
    'of %f s in 20 s ends where the slope stops growing, within a stretch and the 15 %% below it',
    (toeS) => {
      const endS = seatingEndS(sampled(toe(toeS, 300)))!
      expect(endS).toBeGreaterThan(0.85 * toeS - 0.5)
      expect(endS).toBeLessThan(toeS + 0.75)
    },
  )

  it('is not seen in a straight line, in a pumped load, or in a few samples', () => {
    expect(seatingEndS(sampled((t) => 300 * t))).toBeNull()
    expect(seatingEndS(sampled((t) => 300 * Math.floor(t) + (t % 1 > 0.5 ? 300 : 0)))).toBeNull()
    expect(seatingEndS({ timeS: Float64Array.of(0, 1, 2), force: Float64Array.of(0, 1, 4) })).toBeNull()
    expect(seatingEndS(sampled((t) => 300 * t, 0))).toBeNull()
  })
})
