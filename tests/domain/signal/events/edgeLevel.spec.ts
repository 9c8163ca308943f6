import { describe, expect, it } from 'vitest'
import { createRandom } from '#acquisition/virtual/random.ts'
import { edgeLevel } from '#domain/signal/events/edgeLevel.ts'

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
