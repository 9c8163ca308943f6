import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { bestStep, stepOverBend } from '#domain/signal/events/drops/stepFit.ts'

const evenly = (force: readonly number[]) => ({
  timeS: Float64Array.from(force, (_, i) => i),
  force: Float64Array.from(force),
})

describe('the place of a step', () => {
  const random = createRandom(12)
  const sloped = (i: number, drop: number) => 2 * i - (i >= 20 ? drop : 0)

  it('is found from three points beside it', () => {
    const curve = evenly(Array.from({ length: 40 }, (_, i) => sloped(i, 10) + random.normal()))
    for (const off of [-3, -1, 0, 2, 3])
      expect(bestStep(curve, { from: 0, i: 19 + off, j: 20 + off, to: 40 }, 10, 1, 2)).toMatchObject({ i: 19, j: 20 })
  })

  it('leaves out a point that fell into the drop, and keeps one that did not', () => {
    const halfway = evenly(Array.from({ length: 40 }, (_, i) => (i === 20 ? 35 : sloped(i, 10))))
    expect(bestStep(halfway, { from: 0, i: 20, j: 21, to: 40 }, 5, 0.5, 2)).toMatchObject({ i: 19, j: 21 })
    // As many of them as the fall may last: six here, of a fall of 7 s, and of one of 4 s at most not all.
    const slow = evenly(Array.from({ length: 46 }, (_, i) => (i < 20 ? 100 : Math.max(30, 100 - 10 * (i - 19)))))
    expect(bestStep(slow, { from: 0, i: 19, j: 26, to: 46 }, 70, 0.5, 7)).toMatchObject({ i: 19, j: 26 })
    const shorter = bestStep(slow, { from: 0, i: 19, j: 26, to: 46 }, 70, 0.5, 4)
    expect(shorter.j - shorter.i).toBeLessThanOrEqual(4)
    const clean = evenly(Array.from({ length: 40 }, (_, i) => sloped(i, 10)))
    expect(bestStep(clean, { from: 0, i: 18, j: 21, to: 40 }, 10, 0.5, 2)).toMatchObject({ i: 19, j: 20 })
  })
})

describe('a step against a bend', () => {
  // R 4.2.2: x <- 0:9; y <- c(0,1,2,3,4,3.5,3.2,2.9,2.4,2.1)
  // min(sapply(1:8, function(k) sum(resid(lm(y ~ pmin(0, x-k) + pmax(0, x-k)))^2)))   0.0178823529412 (k = 4)
  // sum(resid(lm(y[1:5] ~ x[1:5]))^2) + sum(resid(lm(y[6:10] ~ x[6:10]))^2)          0.012
  const bent = evenly([0, 1, 2, 3, 4, 3.5, 3.2, 2.9, 2.4, 2.1])
  const around = { from: 0, i: 4, j: 5, to: 10 }

  it('is better by what R gives, in noise variances', () => {
    // σ = 0.1: 0.012 / 6 is less than 0.01.
    expect(stepOverBend(bent, around, 0.1)).toBeCloseTo((0.0178823529412 - 0.012) / 0.01, 8)
    // Without noise the residuals of the step stand for it: 0.012 / 6.
    expect(stepOverBend(bent, around, 0)).toBeCloseTo((0.0178823529412 - 0.012) / 0.002, 8)
  })

  it('is judged without the points that fell into it', () => {
    // The points of R, and one in between that belongs to neither line. A bend there is worse: numpy 2.4.6, linalg.lstsq on the
    // columns 1, minimum(0, x - 4.5), maximum(0, x - 4.5): 0.3807.
    const fallen = {
      timeS: Float64Array.of(0, 1, 2, 3, 4, 4.5, 5, 6, 7, 8, 9),
      force: Float64Array.of(0, 1, 2, 3, 4, 99, 3.5, 3.2, 2.9, 2.4, 2.1),
    }
    expect(stepOverBend(fallen, { from: 0, i: 4, j: 6, to: 11 }, 0.1)).toBeCloseTo((0.0178823529412 - 0.012) / 0.01, 8)
  })

  it('is far better where the load truly falls', () => {
    const fallen = evenly([0, 1, 2, 3, 4, 0, 1, 2, 3, 4])
    expect(stepOverBend(fallen, around, 0.5)).toBeGreaterThan(30)
  })
})
