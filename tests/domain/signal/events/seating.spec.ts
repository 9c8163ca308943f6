import { describe, expect, it } from 'vitest'
import { createRandom } from '#acquisition/virtual/random.ts'
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
      const endS = seatingEndS(sampled(toe(toeS, 300)), 0)!
      expect(endS).toBeGreaterThan(0.85 * toeS - 0.5)
      expect(endS).toBeLessThan(toeS + 0.75)
    },
  )

  it('is not seen in a straight line, in a pumped load, or in a few samples', () => {
    const pumped = sampled((t) => 300 * Math.floor(t) + (t % 1 > 0.5 ? 300 : 0))
    expect(
      seatingEndS(
        sampled((t) => 300 * t),
        0,
      ),
    ).toBeNull()
    expect(seatingEndS(pumped, 0)).toBeNull()
    expect(seatingEndS(pumped, 60)).toBeNull()
    expect(seatingEndS({ timeS: Float64Array.of(0, 1, 2), force: Float64Array.of(0, 1, 4) }, 0)).toBeNull()
    expect(
      seatingEndS(
        sampled((t) => 300 * t, 0),
        0,
      ),
    ).toBeNull()
  })

  it('is seen in fewer, longer stretches where the noise is large or the means are few', () => {
    const random = createRandom(4)
    const { timeS, force } = sampled(toe(4, 300))
    // In 40 stretches of 5 means each, noise of 120 is as large as half of the slope.
    const noisy = { timeS, force: force.map((value) => value + 120 * random.normal()) }
    expect(seatingEndS(noisy, 120)).toBeGreaterThan(0.85 * 4 - 1.5)
    expect(seatingEndS(noisy, 120)).toBeLessThan(4 + 2)
    const few = { timeS: timeS.filter((_, i) => i % 8 === 0), force: force.filter((_, i) => i % 8 === 0) }
    expect(few.timeS).toHaveLength(25)
    expect(seatingEndS(few, 0)).toBeGreaterThan(0.85 * 4 - 1)
  })

  it('is not taken from noise on a straight line', () => {
    const random = createRandom(9)
    const found = Array.from({ length: 300 }, () => {
      const { timeS, force } = sampled((t) => 300 * t)
      return seatingEndS({ timeS, force: force.map((value) => value + 90 * random.normal()) }, 90)
    })
    expect(found.filter((endS) => endS !== null).length).toBeLessThanOrEqual(3)
  })
})
