import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { bestStep, stepOverBend } from '#domain/signal/events/drops/stepFit.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

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

  it('is the same wherever the curve lies, in time and in force', () => {
    const moved = { timeS: bent.timeS.map((t) => t + 2 ** 20), force: bent.force.map((f) => f + 2 ** 20) }
    expect(stepOverBend(moved, around, 0.1)).toBeCloseTo(stepOverBend(bent, around, 0.1), 4)
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

/** Sum of squares about the line by least squares through points of a curve, from the normal equations of centred values. */
function aboutLine(x: readonly number[], y: readonly number[]): number {
  const [mx, my] = [x, y].map((values) => values.reduce((sum, value) => sum + value, 0) / values.length) as [
    number,
    number,
  ]
  const sxx = x.reduce((sum, value) => sum + (value - mx) ** 2, 0)
  const sxy = x.reduce((sum, value, k) => sum + (value - mx) * (y[k]! - my), 0)
  const slope = sxx > 0 ? sxy / sxx : 0
  return y.reduce((sum, value, k) => sum + (value - my - slope * (x[k]! - mx)) ** 2, 0)
}

type Points = { timeS: Float64Array; force: Float64Array }
const squaresOf = ({ timeS, force }: Points, from: number, to: number) =>
  aboutLine([...timeS.subarray(from, to)], [...force.subarray(from, to)])

const random = createRandom(2024)

/** Noise of SD 1 on two slopes with a fall between them, over some points, at times that are not even. */
function fallen(length: number, at: number, drop: number, over: number): Points {
  let t = 0
  const timeS = Float64Array.from({ length }, () => {
    t += random.between(0.5, 1.5)
    return t
  })
  const force = timeS.map((time, k) => {
    const share = Math.min(1, Math.max(0, (k - at + 1) / (over + 1)))
    return 0.7 * time + Math.max(0, 0.9 * (time - timeS[Math.min(at, length - 1)]!)) - share * drop + random.normal()
  })
  return { timeS, force }
}

describe('on random falls', () => {
  it('the best step is what trying every place gives', () => {
    for (let trial = 0; trial < 500; trial++) {
      const length = 8 + Math.floor(random.between(0, 18))
      const at = 2 + Math.floor(random.between(0, length - 3))
      const drop = random.between(2, 40)
      const curve = fallen(length, at, drop, Math.floor(random.between(0, 5)))
      const i = at - 1 + Math.floor(random.between(-5, 6))
      const seen = { from: trial % 3, i, j: i + 1 + Math.floor(random.between(0, 3)), to: length - (trial % 2) }
      if (seen.i < seen.from + 1 || seen.j > seen.to - 2) continue
      const noise = [0.01, 1, 2][trial % 3]!
      const longestS = [0.5, 3.2][trial % 2]!
      const wide = seen.j - seen.i
      const places: { i: number; j: number; squares: number; points: number }[] = []
      for (let i = Math.max(seen.from + 1, seen.i - 3 - wide); i <= Math.min(seen.to - 3, seen.j + 2 + wide); i++)
        for (let j = i + 1; j <= seen.to - 2; j++) {
          if (j - i - 1 > 2 && curve.timeS[j]! - curve.timeS[i]! > longestS) break
          const squares = squaresOf(curve, seen.from, i + 1) + squaresOf(curve, j, seen.to)
          places.push({ i, j, squares, points: i + 1 - seen.from + seen.to - j })
        }
      const variance = Math.min(...places.map(({ squares, points }) => squares / Math.max(1, points - 4)))
      const price = Math.max(6 * Math.max(noise ** 2, variance), (0.03 * drop) ** 2)
      const scores = places.map(({ i, j, squares }) => squares + price * (j - i - 1))
      const best = places[scores.indexOf(Math.min(...scores))]!
      const found = bestStep(curve, seen, drop, noise, longestS)
      expect([found.i, found.j, found.from, found.to]).toEqual([best.i, best.j, seen.from, seen.to])
    }
  })

  it('a point that is left out costs six variances, or 0.03 of the fall squared', () => {
    // Level at 100, then at 0, with one point off the upper line by d: kept there it costs most of d², left out the price.
    const leavesOut = (off: number, drop: number, noise: number) => {
      const curve = evenly(Array.from({ length: 400 }, (_, k) => (k < 200 ? 100 : k === 200 ? 100 - off : 0)))
      return bestStep(curve, { from: 0, i: 199, j: 201, to: 400 }, drop, noise, 2).i === 199
    }
    // The end of 201 points bears 4/201 of what is off: d² (1 − 4/201) against the price.
    const kept = Math.sqrt(1 - 4 / 201)
    expect(limitOf((off) => leavesOut(off, 1, 2), 1, 20) * kept).toBeCloseTo(2 * Math.sqrt(6), 1)
    expect(limitOf((off) => leavesOut(off, 200, 0.01), 1, 20) * kept).toBeCloseTo(6, 1)
  })

  it('a step against a bend is what trying every knot gives', () => {
    for (let trial = 0; trial < 300; trial++) {
      const length = 9 + (trial % 23)
      const i = 3 + Math.floor(random.between(0, length - 7))
      // The bend or fall lies anywhere; often it is none where the step was seen.
      const at = 2 + Math.floor(random.between(0, length - 3))
      const curve = fallen(length, at, trial % 2 === 0 ? 0 : random.between(0, 6), 0)
      const step = { from: trial % 2, i, j: i + 1 + (trial % 2), to: length }
      const noise = [0.2, 1.5][trial % 2]!
      const kept = [...curve.timeS.keys()].filter((k) => k >= step.from && (k <= step.i || k >= step.j))
      const squares = squaresOf(curve, step.from, step.i + 1) + squaresOf(curve, step.j, step.to)
      let bent = Number.POSITIVE_INFINITY
      for (let knot = Math.max(step.from + 1, step.i - 8); knot <= Math.min(step.to - 2, step.j + 8); knot++) {
        const x = kept.map((k) => Math.min(0, curve.timeS[k]! - curve.timeS[knot]!))
        const z = kept.map((k) => Math.max(0, curve.timeS[k]! - curve.timeS[knot]!))
        bent = Math.min(
          bent,
          leastSquares(
            [x.map(() => 1), x, z],
            kept.map((k) => curve.force[k]!),
          ),
        )
      }
      const expected = (bent - squares) / Math.max(noise ** 2, squares / Math.max(1, kept.length - 4))
      expect(stepOverBend(curve, step, noise)).toBeCloseTo(expected, 7)
    }
  })
})

/** Sum of squares that a fit of columns leaves, by orthogonal columns (Gram and Schmidt). */
function leastSquares(columns: readonly (readonly number[])[], y: readonly number[]): number {
  const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, value, k) => sum + value * b[k]!, 0)
  const bases: number[][] = []
  let rest = [...y]
  for (const column of columns) {
    let own = [...column]
    for (const base of bases) {
      const part = dot(own, base)
      own = own.map((value, k) => value - part * base[k]!)
    }
    const length = Math.sqrt(dot(own, own))
    const base = own.map((value) => value / length)
    bases.push(base)
    const part = dot(rest, base)
    rest = rest.map((value, k) => value - part * base[k]!)
  }
  return dot(rest, rest)
}
