import { describe, expect, it } from 'vitest'
import { beginFall } from '#domain/signal/loading/fall/fallenLoad.ts'
import { createRecentSamples } from '#domain/signal/stream/recentSamples.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

const settings = { breakDropShare: 0.4, postBreakS: 0.5 }
const rateHz = 1000

/**
 * A load that rises to 1000 N at 1 s and falls to `left`, followed through what comes after: the verdict, when it came
 * (after the fall was noticed), and the fall itself.
 */
function followed(
  after: (sinceS: number) => number,
  { zero = 0, left = 100, before = (sinceS: number) => 1000 + 100 * sinceS } = {},
) {
  const recent = createRecentSamples()
  const timeS = Float64Array.from({ length: rateHz + 2 }, (_, i) => i / rateHz)
  const force = timeS.map((t) => zero + (t > 1 ? left : before(t - 1)))
  recent.take(timeS, force, 0, timeS.length)
  const noticedS = timeS.at(-1)!
  const load = { zero, peak: zero + 1000, windowS: 0.25 }
  const fall = beginFall(recent, load, settings)
  for (let i = 1; i <= 2000; i++) {
    const verdict = fall.push(noticedS + i / rateHz, zero + after(i / rateHz))
    if (verdict !== null) return { verdict, sinceS: i / rateHz, fall }
  }
  return { verdict: null, sinceS: null, fall }
}

describe('a load that has fallen', () => {
  it('is broken when it stays down for postBreakS', () => {
    const { verdict, sinceS, fall } = followed(() => 100)
    expect(verdict).toBe('lasts')
    // Counted from the last sample before the fall, one interval before it was noticed.
    expect(sinceS).toBeCloseTo(0.499, 9)
    expect(fall.breakS).toBeCloseTo(1, 9)
  })

  // 0.9: a drop that the drive makes good is a partial one (stick-slip, pop-in); what comes back short of it has lost for good.
  it('is none as soon as it is back at 0.9 of its peak, whatever the level at rest', () => {
    for (const zero of [0, 500]) {
      expect(followed((t) => (t < 0.2 ? 100 : 900), { zero })).toMatchObject({ verdict: 'recovers', sinceS: 0.2 })
      expect(followed((t) => (t < 0.2 ? 100 : t < 0.22 ? 899 : 100), { zero }).verdict).toBe('lasts')
    }
  })

  it('is none when its mean after the fall is above 0.6 of its mean before', () => {
    // Before: 990 to 1000 N over 0.1 s, 995 N; 0.6 of it are 597 N.
    expect(followed(() => 598).verdict).toBe('recovers')
    expect(followed(() => 596).verdict).toBe('lasts')
  })

  it('compares with the mean before the fall, not with the crest of a knock', () => {
    // 500 N for long, then one sample of 1000 N: 0.6 of the mean of 0.1 s (101 samples, 505 N) are 303 N.
    const knocked = { before: (sinceS: number) => (sinceS < 0 ? 500 : 1000), left: 310 }
    expect(followed(() => 310, knocked).verdict).toBe('recovers')
    expect(followed(() => 290, { ...knocked, left: 290 }).verdict).toBe('lasts')
  })

  it('takes three samples for the mean before where they are far apart', () => {
    const recent = createRecentSamples()
    recent.take(Float64Array.of(0, 1, 2, 3), Float64Array.of(800, 900, 1000, 570), 0, 4)
    const fall = beginFall(recent, { zero: 0, peak: 1000, windowS: 1.5 }, settings)
    fall.push(4, 570)
    // 0.6 of 900 N are 540 N; of the last sample alone they would be 600 N.
    expect(fall.push(5, 570)).toBe('recovers')
  })

  it('has left what it carries from 0.1 s to 0.3 s after the fall: ringing before and hands after do not count', () => {
    const { fall } = followed((t) => (t < 0.0995 || t > 0.3005 ? -300 : 120))
    expect(fall.afterBreak()).toBeCloseTo(120, 9)
    expect(followed((t) => (t < 0.0985 ? 500 : 120)).fall.afterBreak()).toBeCloseTo(120, 9)
    expect(followed((t) => (t > 0.2 ? 220 : 120)).fall.afterBreak()).toBeGreaterThan(165)
    expect(followed((t) => (t > 0.2 ? 220 : 120)).fall.afterBreak()).toBeLessThan(175)
  })

  it('needs two samples after the fall, so that a slow device does not judge by the fall itself', () => {
    const recent = createRecentSamples()
    recent.take(Float64Array.of(0, 1, 2), Float64Array.of(900, 1000, 550), 0, 3)
    const fall = beginFall(recent, { zero: 0, peak: 1000, windowS: 1.5 }, settings)
    expect(fall.push(3, 50)).toBeNull()
    expect(fall.push(4, 50)).toBe('lasts')
    expect(fall.afterBreak()).toBe(50)
  })
})

describe('the moment of a break', () => {
  it('is the last sample before the fall, back from its middle to where samples no longer fall by 0.02 of it', () => {
    const recent = createRecentSamples()
    // A fall of 900 N, of which 0.02 are 18 N: the step of 17 N is still the ramp's end, that of 20 N the fall's beginning.
    const force = Float64Array.of(1000, 1010, 993, 973, 800, 110)
    const timeS = force.map((_, i) => i / 100)
    recent.take(timeS, force, 0, force.length)
    const fall = beginFall(recent, { zero: 0, peak: 1010, windowS: 0.25 }, settings)
    expect(fall.breakS).toBe(0.02)
  })
})

/** A fall noticed at the newest of some samples, at 0 s. */
function fallAfter(
  forces: readonly number[],
  stepS: number,
  { zero = 0, peak = Math.max(...forces), windowS = 2 } = {},
) {
  const recent = createRecentSamples()
  const timeS = Float64Array.from(forces, (_, i) => (i - forces.length + 1) * stepS)
  recent.take(timeS, Float64Array.from(forces), 0, forces.length)
  return beginFall(recent, { zero, peak, windowS }, settings)
}

describe('the limits of a fall that lasts', () => {
  /** The load after the fall from which on it is none, where every sample after it is the same. */
  const limit = (forces: readonly number[], stepS: number, zero = 0) =>
    limitOf(
      (left) => {
        const fall = fallAfter(forces, stepS, { zero, peak: 1e5 })
        let verdict = null
        for (let i = 1; verdict === null; i++) verdict = fall.push(i * stepS, left)
        return verdict === 'recovers'
      },
      zero,
      2000,
    )

  it.each([0, 300])('are 0.6 of the mean load of 0.1 s before it, with a level at rest of %s', (zero) => {
    // 2 N a sample at 1000 Hz: the mean of 101 samples lies 100 N below the last of them.
    const ramp = Array.from({ length: 400 }, (_, i) => 1000 + 2 * i)
    expect(limit([...ramp, 0], 0.001, zero) - zero).toBeCloseTo(0.6 * (1798 - 100 - zero), 1)
  })

  it('are 0.6 of the mean of three samples where they are further apart', () => {
    expect(limit([100, 700, 800, 1200, 0], 0.2)).toBeCloseTo(0.6 * 900, 1)
  })

  it('are met by a mean that is just 0.6 of the one before, and by one of two samples alone', () => {
    const fall = fallAfter([1000, 1000, 1000, 0], 0.25, { peak: 5000 })
    expect(fall.push(0.2, 600)).toBeNull()
    expect(fall.push(0.5, 100)).toBe('recovers')
    // One sample lies from 0.1 s to 0.3 s after the fall.
    expect(fall.afterBreak()).toBe(600)
  })

  it('count the samples at 0.1 s and at 0.3 s', () => {
    const fall = fallAfter([1000, 1000, 0], 0.01)
    for (const [timeS, force] of [
      [0.0999, 900],
      [0.1, 10],
      [0.3, 30],
      [0.3001, 900],
    ] as const)
      fall.push(timeS, force)
    expect(fall.afterBreak()).toBe(20)
  })
})

describe('the first sample of a fall', () => {
  it('is looked for from the middle of the fall back', () => {
    // 550 N is the middle of 1000 N and 100 N. The load stands at 500 N for a moment.
    expect(fallAfter([1000, 500, 495, 100], 0.01).breakS).toBeCloseTo(-0.03, 12)
    expect(fallAfter([1000, 560, 555, 100], 0.01).breakS).toBeCloseTo(-0.01, 12)
  })

  it('may be the first that is in memory', () => {
    expect(fallAfter([1000, 100], 0.01).breakS).toBe(-0.01)
    expect(fallAfter([1000, 800, 100], 0.01).breakS).toBe(-0.02)
    expect(fallAfter([-1000, -1900], 0.01, { zero: -2000, peak: -1000 }).breakS).toBe(-0.01)
  })

  it('is the one after which the load comes down by more than 0.02 of the fall', () => {
    const breakS = (stepN: number) => fallAfter([1000, 1000, 1000 - stepN, 100], 0.01).breakS
    expect([18, 18.1].map(breakS)).toEqual([-0.01, -0.02])
    expect(limitOf((stepN) => breakS(stepN) < -0.015, 1, 100)).toBeCloseTo(18, 3)
  })
})

describe('the time of the fall that was followed', () => {
  it('takes the sample at 0.3 s, too', () => {
    const fall = fallAfter([1000, 1000, 500], 0.01)
    fall.push(0.1, 200)
    fall.push(0.3, 0)
    // 100 N are left, and 190 N are seen first with the second.
    expect(fall.fallS()).toBeCloseTo(0.31, 9)
  })

  it('takes samples up to 0.3 s after it was noticed', () => {
    // From 1000 N to 100 N: 190 N are first seen after 0.2 s.
    const fall = fallAfter([1000, 1000, 500], 0.01)
    for (let i = 1; i <= 40; i++) fall.push(i / 100, i < 20 ? 191 : i === 20 ? 150 : 100)
    // The mean from 0.1 s to 0.3 s, 10 samples of 191 N, one of 150 N and 10 of 100 N, is 145.7 N, and a tenth of the fall 85.4 N.
    expect(fall.fallS()).toBeCloseTo(0.01 + 0.01, 9)
    const late = fallAfter([1000, 1000, 500], 0.01)
    for (let i = 1; i <= 40; i++) late.push(i / 100, i <= 30 ? 300 - 5 * i : 0)
    // The mean from 0.1 s to 0.3 s is that of 200 N, at 0.2 s; 0.1 of 800 N above it are 280 N, which is reached after 0.04 s.
    expect(late.fallS()).toBeCloseTo(0.01 + 0.04, 9)
  })
})
