import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { edgeLevel } from '#domain/signal/events/drops/edgeLevel.ts'

/** Points at equal distances. */
const evenly = (force: readonly number[], stepS = 1) => ({
  timeS: Float64Array.from(force, (_, i) => i * stepS),
  force: Float64Array.from(force),
})

describe('the line up to a point', () => {
  // R 4.2.2: x <- 0:7; y <- c(1,3,2,5,4,6,8,7); m <- lm(y ~ x)
  // fitted(m)[8] 7.75, coef(m)[2] 0.928571428571, predict(m, se.fit = TRUE)$se.fit[8] 0.633865691046
  const y = [1, 3, 2, 5, 4, 6, 8, 7]

  it('has the level, the slope and the standard error that R gives', () => {
    const found = edgeLevel(evenly(y), 8, 7, 'before', 0.1, 7)!
    expect(found.points).toBe(8)
    expect(found.level).toBeCloseTo(7.75, 10)
    expect(found.slope).toBeCloseTo(0.928571428571, 10)
    expect(found.error).toBeCloseTo(0.633865691046, 10)
  })

  it('is the same after a point, seen from the other end of time, and under a large offset', () => {
    const { timeS, force } = evenly([...y].reverse())
    const moved = { timeS: timeS.map((t) => t + 1e5), force: force.map((f) => f + 1e6) }
    const found = edgeLevel(moved, 8, 0, 'after', 0.1, 7)!
    expect(found.level - 1e6).toBeCloseTo(7.75, 8)
    expect(found.slope).toBeCloseTo(-0.928571428571, 8)
    expect(found.error).toBeCloseTo(0.633865691046, 8)
  })

  it('goes as far as the points lie on one within the noise', () => {
    const bent = evenly(
      Array.from({ length: 60 }, (_, i) => (i < 40 ? 0 : 5 * (i - 40))),
      0.01,
    )
    expect(edgeLevel(bent, 60, 59, 'before', 0.2, 0)!.points).toBe(16)
    expect(edgeLevel(bent, 40, 39, 'before', 0.2, 0)!.points).toBe(32)
  })

  it('ends where the mean square of the residuals is more than two of its SDs above that of the noise', () => {
    // a (+1, −1, −1, +1) again and again has mean and slope 0 over any multiple of four points, so s² = w a² / (w − 2) there.
    // Limits of a²: 24 points 1.469, 32 points 1.422, 48 points 1.358, 64 points 1.317. Two misses in a row end the trials.
    const waving = (square: number) =>
      evenly(
        Array.from({ length: 64 }, (_, i) => Math.sqrt(square) * (i % 4 === 0 || i % 4 === 3 ? 1 : -1)),
        0.01,
      )
    expect([1.3, 1.34, 1.39, 1.44].map((square) => edgeLevel(waving(square), 64, 63, 'before', 1, 0)!.points)).toEqual([
      64, 48, 32, 24,
    ])
  })

  it('goes on where the next length fits again', () => {
    // The last 24 points miss: 24 x 1.49 / 22 = 1.625; with 8 of a² = 1 before them 32 fit: 43.76 / 30 = 1.459; so do 48 and 64.
    const calmer = evenly(
      Array.from({ length: 64 }, (_, i) => Math.sqrt(i < 40 ? 1 : 1.49) * (i % 4 === 0 || i % 4 === 3 ? 1 : -1)),
      0.01,
    )
    expect(edgeLevel(calmer, 64, 63, 'before', 1, 0)!.points).toBe(64)
  })

  it('goes no further than a second, but over the shortest time whatever the points do', () => {
    const straight = evenly(new Array<number>(50).fill(3), 0.1)
    expect(edgeLevel(straight, 50, 49, 'before', 1, 0)!.points).toBe(8)
    const jagged = evenly(
      Array.from({ length: 50 }, (_, i) => 100 * (i % 2)),
      0.01,
    )
    expect(edgeLevel(jagged, 50, 49, 'before', 1, 0.04)!.points).toBe(6)
  })

  it('knows its level as well as it says, over a thousand seeded trials', () => {
    const random = createRandom(4)
    let squares = 0
    for (let trial = 0; trial < 1000; trial++) {
      const noisy = evenly(
        Array.from({ length: 40 }, (_, i) => 7 * i + random.normal()),
        0.01,
      )
      const { level, error } = edgeLevel(noisy, 40, 39, 'before', 1, 0.04)!
      squares += ((level - 7 * 39) / error) ** 2
    }
    // Chi-square of 1000 degrees of freedom: SD 4.5 %.
    expect(Math.abs(squares / 1000 - 1)).toBeLessThan(0.18)
  })

  it('is none where a point stands alone', () => {
    expect(edgeLevel(evenly([1, 2]), 2, 0, 'before', 1, 0)).toBeNull()
  })
})

describe('how many points a line goes through', () => {
  it('is as many of 2, 3, 4, 6, 8, 12, 16, 24, 32, 48 and 64 as there are', () => {
    const level = evenly(new Array<number>(80).fill(3), 1 / 128)
    const lengths = [2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64]
    for (let available = 2; available <= 70; available++) {
      const most = lengths.findLast((length) => length <= available)
      expect(edgeLevel(level, available, available - 1, 'before', 0, 0)!.points).toBe(most)
      expect(edgeLevel(level, available + 5, 5, 'after', 0, 0)!.points).toBe(most)
    }
  })

  it('is the last that fitted before two lengths in a row that did not', () => {
    // (+1, −1, −1, +1) with squares of 1.5 for the last 24 points, 1.3 for the eight before, 0.2 for the rest. Mean squares of
    // the residuals and limits: 16 points 24/14 = 1.714 of 1.756; 24 points 36/22 = 1.636 of 1.603; 32 points 46.4/30 = 1.547 of
    // 1.516; 48 points 49.6/46 = 1.078 of 1.417.
    const waving = evenly(
      Array.from({ length: 64 }, (_, i) => {
        const square = i >= 40 ? 1.5 : i >= 32 ? 1.3 : 0.2
        return Math.sqrt(square) * (i % 4 === 0 || i % 4 === 3 ? 1 : -1)
      }),
      0.01,
    )
    expect(edgeLevel(waving, 64, 63, 'before', 1, 0)!.points).toBe(16)
  })

  it('is such that they reach over the shortest time, and over no more than a second', () => {
    const jagged = (stepS: number) =>
      evenly(
        Array.from({ length: 40 }, (_, i) => 100 * (i % 2)),
        stepS,
      )
    // Six points a quarter of a second apart reach over 1.25 s, four over 0.75 s.
    expect(edgeLevel(jagged(0.25), 40, 20, 'before', 1, 1)!.points).toBe(6)
    expect(edgeLevel(jagged(0.25), 40, 20, 'before', 1, 1.25)!.points).toBe(6)
    expect(edgeLevel(jagged(0.25), 40, 20, 'before', 1, 1.26)!.points).toBe(8)
    // Six points a fifth of a second apart reach over a second.
    expect(edgeLevel(evenly([7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7], 0.2), 12, 0, 'after', 1, 0)!.points).toBe(6)
  })

  it('leaves the noise of a point to the level of two, and one degree of freedom to that of three', () => {
    expect(edgeLevel(evenly([5, 8]), 2, 1, 'before', 0.1, 0)).toMatchObject({
      level: 8,
      slope: 3,
      error: expect.closeTo(0.1, 12),
      points: 2,
    })
    // By hand: through (0, 0), (1, 1), (2, 0) it is level; s² = 2/3; sqrt((4 · 3 − 2) / (3 · 4)) of s.
    const three = edgeLevel(evenly([0, 1, 0]), 3, 2, 'before', 0.1, 2)!
    expect(three.error).toBeCloseTo(Math.sqrt((2 / 3) * (10 / 12)), 12)
  })
})
