import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { noiseOfMeans } from '#domain/signal/events/noiseOfMeans.ts'

/** A load with noise of SD 3, and what was seen of the noise at rest. */
function noisy(load: (i: number) => number, atRest: number, samplesPerMean = 1) {
  const random = createRandom(8)
  const force = Float64Array.from({ length: 20_000 }, (_, i) => load(i) + 3 * random.normal())
  return noiseOfMeans({ force, noise: atRest, samplesPerMean }, force.length)
}

describe('the noise of the means', () => {
  it.each([
    ['a ramp', (i: number) => 5 * i],
    ['a load that drops every 40 points', (i: number) => 20 * (i % 40)],
    ['a load that is pumped', (i: number) => 100 * Math.floor(i / 30) + 10 * Math.min(10, i % 30)],
  ])('is seen on %s', (_, load) => {
    expect(noisy(load, 0)).toBeGreaterThan(2.6)
    expect(noisy(load, 0)).toBeLessThan(4)
  })

  it('is at least what the noise at rest leaves in a mean', () => {
    // 40 / sqrt(16)
    expect(noisy(() => 0, 40, 16)).toBeCloseTo(10, 12)
  })

  it('is that at rest where a curve is too short to tell', () => {
    expect(noiseOfMeans({ force: Float64Array.of(1, 2), noise: 2, samplesPerMean: 4 }, 2)).toBe(1)
  })
})

describe('noise seen in third differences', () => {
  it('is their lower quartile over 0.3186 and the root of 20', () => {
    // Third differences of i³ are 6 everywhere. R qnorm(0.625) = 0.31863936396; 20 = 1 + 9 + 9 + 1.
    const cubes = Float64Array.from({ length: 50 }, (_, i) => i ** 3)
    const expected = 6 / (0.31863936396 * Math.sqrt(20))
    for (const count of [50, 4])
      expect(noiseOfMeans({ force: cubes, noise: 0, samplesPerMean: 1 }, count)).toBeCloseTo(expected, 2)
  })

  it('is nothing where there are too few points for one and nothing is known of rest', () => {
    expect(noiseOfMeans({ force: Float64Array.of(1, 2, 9), noise: 0, samplesPerMean: 1 }, 3)).toBe(0)
  })
})
