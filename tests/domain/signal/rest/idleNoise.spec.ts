import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createIdleNoise } from '#domain/signal/rest/idleNoise.ts'

function noiseOf(rateHz: number, lengthS: number, force: (timeS: number, i: number) => number) {
  const idle = createIdleNoise()
  idle.begin(0, 0)
  for (let i = 0; i < lengthS * rateHz; i++) {
    const value = force(i / rateHz, i)
    idle.see(value)
    idle.push(i / rateHz, value)
  }
  return idle
}

describe('noise at rest', () => {
  it.each([
    // NIST StRD NumAcc3 and NumAcc4: values that alternate by 0.1 about a large offset, certified SD 0.1.
    ['NumAcc3', 1_000_000.2],
    ['NumAcc4', 10_000_000.2],
  ])('of %s is 0.1 within what a block of 20 allows', (_name, mean) => {
    // A line through n alternating values leaves n - 2 degrees of freedom for a sum of squares of n 0.01 (1 - 3/n²), and the
    // median correction of a chi-square with 18 degrees adds 1.9 %: sqrt(20/18 x 1.0377) = 1.0737.
    const noise = noiseOf(100, 30, (_t, i) => mean + (i % 2 === 0 ? 0.1 : -0.1)).noise()!
    expect(noise / 0.1).toBeGreaterThan(1.05)
    expect(noise / 0.1).toBeLessThan(1.09)
  })

  it.each([10, 80, 1000])('of normal noise is its SD at %i Hz, on average over 200 seeds within 3 %', (rateHz) => {
    let sum = 0
    for (let seed = 1; seed <= 200; seed++) {
      const random = createRandom(seed)
      sum += noiseOf(rateHz, 40, () => 3 * random.normal()).noise()!
    }
    expect(sum / 200 / 3).toBeGreaterThan(0.97)
    expect(sum / 200 / 3).toBeLessThan(1.03)
  })

  it('counts what wanders too slowly for a block, as noise that a converter has smoothed', () => {
    // First-order autoregressive noise of SD 1: a block of 16 samples sees only part of it.
    for (const [share, least] of [
      [0.7, 0.85],
      [0.9, 0.7],
    ] as const) {
      let sum = 0
      for (let seed = 1; seed <= 100; seed++) {
        const random = createRandom(seed)
        let value = random.normal()
        sum += noiseOf(25, 60, () => {
          value = share * value + Math.sqrt(1 - share * share) * random.normal()
          return value
        }).noise()!
      }
      expect(sum / 100).toBeGreaterThan(least)
      expect(sum / 100).toBeLessThan(1.1)
    }
  })

  it('is not blown up by knocks nor by drift', () => {
    const random = createRandom(5)
    const idle = noiseOf(100, 60, (t) => {
      const u = t % 5
      return 2 * t + 300 * Math.exp(-u / 0.05) * Math.sin(2 * Math.PI * 20 * u) + random.normal()
    })
    expect(idle.noise()).toBeGreaterThan(0.7)
    expect(idle.noise()).toBeLessThan(1.5)
  })

  it('of a signal that never changes is nothing, and its resolution too', () => {
    const idle = noiseOf(100, 3, () => 17)
    expect(idle.noise()).toBe(0)
    expect(idle.resolution()).toBe(0)
  })

  it('knows the resolution as the smallest step', () => {
    expect(noiseOf(100, 3, (_t, i) => [0, 0, 5, 10, 0][i % 5]!).resolution()).toBe(5)
  })
})

describe('level at rest', () => {
  it('follows a fall at once and a rise only as fast as allowed', () => {
    const idle = createIdleNoise()
    idle.begin(1, 0)
    idle.setRisePerS(0.1)
    for (let i = 0; i < 300; i++) idle.push(i / 100, -50)
    expect(idle.level()).toBe(-50)
    for (let i = 300; i < 1300; i++) idle.push(i / 100, 100)
    expect(idle.level()).toBeGreaterThan(-50)
    expect(idle.level()).toBeLessThan(-48.9)
  })
})

describe('noise of blocks that are known', () => {
  /** Blocks of 16 samples at 64 Hz, 0.234 s each, of a level of its own and with values that alternate about it. */
  function blocks(levels: readonly number[], swing: number, first = 0) {
    const idle = createIdleNoise()
    idle.begin(first, 0)
    let i = 0
    for (const level of levels)
      for (let k = 0; k < 16; k++) {
        idle.push(i / 64, level + (k % 2 === 0 ? swing : -swing))
        i += 1
      }
    return idle
  }

  it('is the SD about the line of a block over that of the median of chi-square', () => {
    // Alternating +1 and -1: squares 16, products with the places -8, squares of the places 16 · 255 / 12 = 340; 14 degrees of freedom.
    // scipy 1.17.1: stats.chi2.ppf(0.5, 14) / 14 = 0.9528052, of which the formula of Wilson and Hilferty is within 0.1 %.
    const expected = Math.sqrt((16 - 64 / 340) / 14 / 0.9528052)
    expect(blocks([0, 0, 0], 1).noise()! / expected).toBeCloseTo(1, 3)
    expect(blocks([], 1, 3).noise()).toBe(3)
    expect(createIdleNoise().noise()).toBeNaN()
  })

  it('counts the median step between seven blocks and more, over that of a square', () => {
    // Levels 0 and 10 by turns without any noise: each step is 10. R qchisq(0.5, 1) = 0.4549364.
    const turning = (count: number) => Array.from({ length: count }, (_, k) => 10 * (k % 2))
    expect(blocks(turning(7), 0).noise()).toBe(0)
    expect(blocks(turning(8), 0).noise()).toBeCloseTo(10 / Math.sqrt(2 * 0.4549364), 5)
    // Of white noise nothing is left: a step as large as the noise of two means.
    const within = (16 - 64 / 340) / 14 / 0.9528052
    const small = Math.sqrt(2 * 0.4549364 * (within / 16)) * 0.99
    expect(
      blocks(
        turning(8).map((level) => (level * small) / 10),
        1,
      ).noise()! **
        2 /
        within,
    ).toBeCloseTo(1, 3)
    const larger = Math.sqrt(2 * 0.4549364 * (3 * within))
    expect(
      blocks(
        turning(8).map((level) => (level * larger) / 10),
        1,
      ).noise()! **
        2 /
        within,
    ).toBeCloseTo(4 - 1 / 16, 2)
  })

  it('goes by the last fifteen blocks', () => {
    const after = (quiet: number) => {
      const idle = createIdleNoise()
      idle.begin(0, 0)
      let i = 0
      const block = (swing: number) => {
        for (let k = 0; k < 16; k++, i++) idle.push(i / 64, k % 2 === 0 ? swing : -swing)
      }
      for (let b = 0; b < 15; b++) block(10)
      for (let b = 0; b < quiet; b++) block(1)
      return idle.noise()! > 5
    }
    expect([7, 8].map(after)).toEqual([true, false])
  })

  it('leaves out a block that was dropped', () => {
    const idle = createIdleNoise()
    idle.begin(2, 0)
    for (let i = 0; i < 15; i++) idle.push(i / 64, 99)
    idle.dropBlock()
    for (let i = 15; i < 30; i++) expect(idle.push(i / 64, 5)).toBe(false)
    expect(idle.push(30 / 64, 5)).toBe(true)
    expect([idle.noise(), idle.level()]).toEqual([0, 0])
  })
})

describe('level of blocks that are known', () => {
  it('is the median of five, and rises with the time that a block took', () => {
    const idle = createIdleNoise()
    idle.begin(1, 10)
    idle.setRisePerS(64 / 15)
    let i = 0
    const block = (level: number) => {
      for (let k = 0; k < 16; k++, i++) idle.push(i / 64, level)
      return idle.level()
    }
    // A block is 15/64 s long: 1 N at a time.
    expect([20, 20, 20, 20].map(block)).toEqual([11, 12, 13, 14])
    expect(block(0)).toBe(15)
    expect(block(0)).toBe(16)
    expect(block(0)).toBe(0)
  })
})

describe('resolution', () => {
  it('is known anew only where a smaller step comes', () => {
    const idle = createIdleNoise()
    expect([3, 3, 9, 5, 9, 8.5, 3].map((force) => idle.see(force))).toEqual([
      ...[false, false, true, true, false, true, false],
    ])
    expect(idle.resolution()).toBe(0.5)
  })
})
