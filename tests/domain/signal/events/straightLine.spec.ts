import { describe, expect, it } from 'vitest'
import { lineThrough } from '#domain/signal/events/straightLine.ts'

describe('straight line through a part of a curve', () => {
  const timeS = [0, 0.1, 0.25, 0.4, 0.55, 0.8, 1]
  const force = [0.5, 31, 77.5, 119, 171, 246, 300.25]

  it('is that of scipy, also far from the start of time', () => {
    // scipy 1.17.1: r = scipy.stats.linregress(timeS, force): slope 302.39536954585924, intercept 1.1177649154051608;
    // numpy.sqrt(((force - r.intercept - r.slope * timeS) ** 2).sum() / 5) = 2.923585272563173
    for (const laterS of [0, 1e6]) {
      const padded = [-5, ...timeS.map((t) => t + laterS), laterS + 9]
      const line = lineThrough(Float64Array.from(padded), Float64Array.from([77, ...force, -3]), 1, 8)!
      expect(line.slope).toBeCloseTo(302.39536954585924, laterS === 0 ? 9 : 4)
      expect(line.mean - line.slope * (line.meanS - laterS)).toBeCloseTo(1.1177649154051608, laterS === 0 ? 9 : 4)
      expect(line.residualSD).toBeCloseTo(2.923585272563173, laterS === 0 ? 9 : 4)
    }
  })

  it('leaves residuals of one degree of freedom through three points, and does not stand upright', () => {
    // By hand: through (0, 0), (1, 1), (2, 0) it is level at 1/3; the squares left are 2/3.
    expect(lineThrough(Float64Array.of(0, 1, 2), Float64Array.of(0, 1, 0), 0, 3)!.residualSD).toBeCloseTo(
      Math.sqrt(2 / 3),
      12,
    )
    expect(lineThrough(Float64Array.of(4, 4), Float64Array.of(0, 1), 0, 2)).toBeNull()
  })

  it('has no residuals through two points and does not exist through fewer', () => {
    const line = lineThrough(Float64Array.of(1, 3), Float64Array.of(5, 9), 0, 2)!
    expect(line).toMatchObject({ slope: 2, mean: 7, meanS: 2 })
    expect(line.residualSD).toBeNaN()
    // Whatever rounding leaves.
    for (const x of [0.1, 0.3, 0.7, 1.1, 1.3])
      expect(lineThrough(Float64Array.of(x, 3 * x), Float64Array.of(x / 3, x / 7), 0, 2)!.residualSD).toBeNaN()
    expect(lineThrough(Float64Array.of(1, 3), Float64Array.of(5, 9), 0, 1)).toBeNull()
    expect(lineThrough(Float64Array.of(1, 3), Float64Array.of(5, 9), 2, 1)).toBeNull()
  })
})
