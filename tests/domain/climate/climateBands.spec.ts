import { describe, expect, it } from 'vitest'
import { thinnedBand } from '#domain/climate/climateBands.ts'

const steps = (count: number, at: (i: number) => number) => Float64Array.from({ length: count }, (_, i) => at(i))

describe('a quantity thinned for a figure', () => {
  it('keeps the lowest and the highest value of each stretch, and its mean over time', () => {
    const timeS = steps(101, (i) => i)
    const standingS = steps(101, (i) => (i === 10 ? 9 : 1))
    const band = thinnedBand(
      timeS,
      steps(101, (i) => (i === 10 ? 100 : 0)),
      standingS,
      10,
    )!
    expect(band.timeS).toHaveLength(10)
    expect(band.max[1]).toBe(100)
    expect(band.min[1]).toBe(0)
    expect(band.mean[1]).toBeCloseTo(900 / 18, 12)
    expect(band.max[0]).toBe(0)
  })

  it('keeps every reading where they are few, and leaves out what was not read', () => {
    const band = thinnedBand(
      steps(3, (i) => i * 60),
      Float64Array.of(1, Number.NaN, 3),
      new Float64Array(3),
      10,
    )!
    expect([...band.timeS]).toEqual([0, 120])
    expect([...band.mean]).toEqual([1, 3])
  })

  it('is nothing where nothing was read', () => {
    expect(thinnedBand(Float64Array.of(0), Float64Array.of(Number.NaN), Float64Array.of(1), 10)).toBeNull()
    expect(thinnedBand(new Float64Array(0), new Float64Array(0), new Float64Array(0), 10)).toBeNull()
  })
})
