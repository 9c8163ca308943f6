import { describe, expect, it } from 'vitest'
import { createLoadProfile } from '#domain/signal/loadProfile.ts'

describe('the profile of a loading', () => {
  it.each([1, 255, 256, 1000, 100_000])('of %i samples on a line stays on it, in at most 256 means', (samples) => {
    const profile = createLoadProfile()
    for (let i = 0; i < samples; i++) profile.push(i / 100, 3 * i)
    const { timeS, force } = profile.until(1e9)
    expect(timeS.length).toBeLessThanOrEqual(256)
    expect(timeS.length).toBeGreaterThan(samples > 128 ? 120 : samples - 1)
    timeS.forEach((t, i) => {
      expect(force[i]! / 3).toBeCloseTo(t * 100, 6)
    })
  })

  it('ends where asked, tells when a force was first reached, and can start anew', () => {
    const profile = createLoadProfile()
    for (let i = 0; i < 100; i++) profile.push(i, 10 * i)
    expect(profile.until(20).timeS.length).toBe(21)
    expect(profile.firstReachedS(500)).toBe(50)
    expect(profile.firstReachedS(1e9)).toBe(99)
    profile.clear()
    expect(profile.until(1000).timeS.length).toBe(0)
    expect(profile.firstReachedS(1)).toBeNaN()
  })
})
