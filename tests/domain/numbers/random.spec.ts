import { describe, expect, it } from 'vitest'
import { createRandom, randomFromState } from '#domain/numbers/random.ts'

describe('random numbers of the virtual bench', () => {
  it('are those of the reference program of xoshiro128** for the state 1, 2, 3, 4', () => {
    // Source: output of the authors' xoshiro128starstar.c 1.1 as printed in the tests of the Rust crate rand_xoshiro.
    const random = randomFromState([1, 2, 3, 4])
    const first = Array.from({ length: 10 }, () => random.whole())
    expect(first).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ])
  })

  it('come out the same for the same seed and purpose, and differ for another of either', () => {
    const draw = (seed: number, purpose: number) => {
      const random = createRandom(seed, purpose)
      return Array.from({ length: 5 }, () => random.whole())
    }
    expect(draw(7, 1)).toEqual(draw(7, 1))
    expect(draw(7, 1)).not.toEqual(draw(7, 2))
    expect(draw(7, 1)).not.toEqual(draw(8, 1))
  })

  it('are normal: mean 0, SD 1, and 4.55 % lie outside two SDs (table of the normal distribution)', () => {
    const random = createRandom(42)
    const n = 200_000
    let sum = 0
    let squares = 0
    let outside = 0
    for (let i = 0; i < n; i++) {
      const x = random.normal()
      sum += x
      squares += x * x
      if (Math.abs(x) > 2) outside += 1
    }
    // Limits are four standard errors.
    expect(Math.abs(sum / n)).toBeLessThan(4 / Math.sqrt(n))
    expect(Math.abs(squares / n - 1)).toBeLessThan(4 * Math.sqrt(2 / n))
    expect(Math.abs(outside / n - 0.0455)).toBeLessThan(4 * Math.sqrt((0.0455 * 0.9545) / n))
  })

  it('wait on average the inverse of the rate, and for ever when nothing ever happens', () => {
    const random = createRandom(3)
    const n = 50_000
    let sum = 0
    for (let i = 0; i < n; i++) sum += random.waiting(4)
    expect(Math.abs(sum / n - 0.25)).toBeLessThan((4 * 0.25) / Math.sqrt(n))
    expect(random.waiting(0)).toBe(Number.POSITIVE_INFINITY)
  })
})
