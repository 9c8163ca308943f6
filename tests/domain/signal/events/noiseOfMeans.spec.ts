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
