import { describe, expect, it } from 'vitest'
import { calmRules, captureWindowS, glide, nextCeiling, roundUpCalmly } from '#renderer/plots/live/calmAxis.ts'

describe('roundUpCalmly', () => {
  it.each([
    [1, 1],
    [1.01, 1.5],
    [0.07, 0.08],
    [430, 500],
    [8.1, 10],
    [20_640, 30_000],
  ])('takes %d up to %d', (value, up) => expect(roundUpCalmly(value)).toBeCloseTo(up, 12))

  it('refuses what has no ceiling', () => {
    expect(() => roundUpCalmly(0)).toThrow(RangeError)
    expect(() => roundUpCalmly(Number.NaN)).toThrow(RangeError)
  })
})

describe('nextCeiling', () => {
  const rules = { ...calmRules, least: 50 }

  it('does not move while the curve has room', () => {
    expect(nextCeiling(1000, 900, rules)).toBe(1000)
  })

  it('changes only a few times while a specimen is loaded to 5 kN', () => {
    const seen = new Set<number>()
    let ceiling = nextCeiling(0, 0, rules)
    for (let force = 0; force <= 5000; force += 5) {
      ceiling = nextCeiling(ceiling, force, rules)
      seen.add(ceiling)
      expect(force).toBeLessThanOrEqual(ceiling)
    }
    expect(seen.size).toBeLessThanOrEqual(8)
  })

  it('never falls', () => expect(nextCeiling(8000, 10, rules)).toBe(8000))
  it('is never below its least', () => expect(nextCeiling(0, 0, rules)).toBe(50))
})

describe('captureWindowS', () => {
  it('takes few lengths and always leaves room on the right', () => {
    const seen = new Set<number>()
    for (let elapsed = 0; elapsed < 60; elapsed += 0.1) {
      const length = captureWindowS(elapsed)
      seen.add(length)
      expect(elapsed).toBeLessThan(length)
    }
    expect([...seen]).toEqual([8, 12, 20, 30, 45, 60, 90])
  })

  it('goes on beyond the longest step', () => expect(captureWindowS(1000)).toBeGreaterThan(1000))
})

describe('glide', () => {
  it('comes nearer each frame, ends exactly on its target, and does not overshoot', () => {
    let shown = 0
    let frames = 0
    while (shown !== 10 && frames < 1000) {
      const next = glide(shown, 10, 1 / 60, 0.12, 0.01)
      expect(next).toBeGreaterThan(shown)
      expect(next).toBeLessThanOrEqual(10)
      shown = next
      frames++
    }
    expect(shown).toBe(10)
    expect(frames).toBeLessThan(120)
  })

  it('is there at once for those who asked for reduced motion', () => expect(glide(0, 10, 1 / 60, 0, 0.01)).toBe(10))
})
