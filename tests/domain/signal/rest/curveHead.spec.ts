import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { judgeHead } from '#domain/signal/rest/curveHead.ts'

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
