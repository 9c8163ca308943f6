import { describe, expect, it } from 'vitest'
import { chiSquareDraw } from '#domain/numbers/chiSquareDraw.ts'
import { chiSquareProbability } from '#domain/numbers/distributions/chiSquare.ts'
import { createRandom } from '#domain/numbers/random.ts'

describe('random chi-square numbers', () => {
  it.each([1, 2, 3, 9, 199])('of %d degrees of freedom follow their distribution', (df) => {
    const random = createRandom(df)
    const count = 20_000
    const places = Float64Array.from({ length: count }, () =>
      chiSquareProbability(chiSquareDraw(df, random), df),
    ).sort()
    // Kolmogorov and Smirnov: at 1 in 10,000 the largest distance is 2.23/√n
    const farthest = places.reduce((most, place, i) => Math.max(most, Math.abs(place - (i + 0.5) / count)), 0)
    expect(farthest).toBeLessThan(2.23 / Math.sqrt(count))
  })

  it('are refused for degrees of freedom that are no whole number from 1 on', () => {
    expect(() => chiSquareDraw(0, createRandom(1))).toThrow(RangeError)
    expect(() => chiSquareDraw(1.5, createRandom(1))).toThrow(RangeError)
  })
})
