import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createIdleNoise } from '#domain/signal/rest/idleNoise.ts'

function noiseOf(rateHz: number, lengthS: number, force: (timeS: number, i: number) => number) {
  const idle = createIdleNoise()
  idle.begin(null, 0)
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
