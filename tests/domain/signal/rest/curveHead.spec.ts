import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { judgeHead } from '#domain/signal/rest/curveHead.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

const head = (forces: readonly number[], allowed = 0) =>
  judgeHead(
    Float64Array.from(forces, (_, i) => i / 10),
    Float64Array.from(forces),
    forces.length,
    allowed,
  )

describe('the head of a curve', () => {
  it('at rest has its median for level, whatever one glitch says', () => {
    expect(head([7, 6, 7, 8, 7, 9000, 7, 6, 8])).toMatchObject({ atRest: true, level: 7 })
  })

  it('that rises starts under load, above the zero of the tare', () => {
    expect(head([200, 300, 400, 500, 600, 700, 800, 900, 1000])).toEqual({ atRest: false, level: 0, noise: 0 })
    expect(head([-20, 80, 180, 280, 380, 480, 580, 680, 780])).toMatchObject({ atRest: false, level: -20 })
    // The same in a larger unit.
    expect(head([0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1])).toMatchObject({ atRest: false, level: 0 })
  })

  it('that falls is at rest nowhere yet', () => {
    expect(head([900, 800, 700, 600, 500, 400, 300, 200, 100])).toMatchObject({ atRest: false, level: 800 })
  })

  it('may rise a little where the start threshold allows it', () => {
    expect(head([0, 1, 2, 3, 4, 5, 6, 7, 8], 10)).toMatchObject({ atRest: true, level: 4 })
  })

  it('has the SD about its own line for noise', () => {
    // The line through the medians is 0; by hand: six squares of 1 over 9 - 2 degrees.
    expect(head([0, 1, -1, 0, 1, -1, 0, 1, -1]).noise).toBeCloseTo(Math.sqrt(6 / 7), 12)
    expect(head([1, -1, 0, 1, -1, 0, 1, -1, 0]).noise).toBeCloseTo(Math.sqrt(6 / 7), 12)
    expect(() => judgeHead(new Float64Array(0), new Float64Array(0), 0, 0)).toThrow(RangeError)
  })

  it('does not count a glitch as noise', () => {
    expect(head([0, 1, -1, 0, 1, 9000, 0, 1, -1]).noise).toBeCloseTo(Math.sqrt(5 / 6), 12)
  })

  it('of sixteen samples is seldom far too quiet: as often below half the SD as chi-square has it', () => {
    const random = createRandom(16)
    const heads = 4000
    let quiet = 0
    let sum = 0
    for (let i = 0; i < heads; i++) {
      const { noise } = head(Array.from({ length: 16 }, () => random.normal()))
      sum += noise
      if (noise < 0.5) quiet += 1
    }
    // R: pchisq(14 / 4, 14) = 0.0022 about the line by least squares; about the one through medians it is no more often.
    expect(quiet / heads).toBeLessThan(0.005)
    expect(sum / heads).toBeGreaterThan(0.95)
    expect(sum / heads).toBeLessThan(1.15)
  })
})

describe('what makes a head', () => {
  /** Nine samples: three at a level, three half way and three up, with a noise of half a rise of one either way in each three. */
  const rising = (rise: number, noise: number, allowed = 0) =>
    head(
      [0, 0, 0, rise / 2, rise / 2, rise / 2, rise, rise, rise].map((value, i) => value + noise * ((i % 3) - 1)),
      allowed,
    )

  it('be at rest is a rise of four noise SDs, or what is allowed', () => {
    // Between the medians of the first and the last third, a level line but for the noise: residuals by the noise alone where the
    // rise is nothing beside it.
    for (const allowed of [3, 17]) {
      expect(rising(allowed, 0, allowed).atRest).toBe(true)
      expect(rising(allowed + 0.001, 0, allowed).atRest).toBe(false)
    }
    const restless = (rise: number) => !rising(rise, 1).atRest
    const limit = limitOf(restless, 1, 40)
    expect(limit / rising(limit, 1).noise).toBeCloseTo(4, 3)
  })

  it('be a sample is to lie within ten robust SDs of the line', () => {
    // 1.4826 is the SD of normal values over their median distance: R 1 / qnorm(0.75).
    const noisy = (wild: number) => head([0, 1, -1, 0, 1, wild, 0, 1, -1]).noise
    expect(limitOf((wild) => noisy(wild) > 2, 5, 40)).toBeCloseTo(14.826, 2)
  })

  it('be its line is to go through the medians of the thirds, by their times', () => {
    const judged = judgeHead(
      Float64Array.of(0, 1, 2, 10, 11, 12, 30, 31, 32),
      Float64Array.of(5, 5, 5, 15, 15, 15, 35, 35, 35).map((value, i) => value + ((i % 3) - 1)),
      9,
      1000,
    )
    // Slope 1 and the noise lies on it.
    expect(judged.noise).toBeCloseTo(0, 12)
    expect(judged.level).toBe(15)
  })

  it('be few is to have the robust SD for noise', () => {
    expect(head([0, 2, 4, 6]).noise).toBeCloseTo(0, 12)
    expect(head([3])).toEqual({ atRest: true, level: 3, noise: 0 })
    // Of two samples the line goes through both.
    expect(head([3, 9], 100)).toEqual({ atRest: true, level: 6, noise: 0 })
    // Line through 0 and 0: distances 0, 1, 5, 0, median 0.5.
    expect(head([0, 1, 5, 0], 100).noise).toBeCloseTo(0.5 / 0.6744897501960817, 9)
    // Five that stay: sqrt((1 + 25) / 3).
    expect(head([0, 1, 5, 1, 0], 100).noise).toBeCloseTo(Math.sqrt(27 / 3), 9)
  })
})
