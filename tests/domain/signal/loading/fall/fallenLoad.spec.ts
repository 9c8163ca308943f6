import { describe, expect, it } from 'vitest'
import { beginFall } from '#domain/signal/loading/fall/fallenLoad.ts'
import { createRecentSamples } from '#domain/signal/stream/recentSamples.ts'

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
  const load = { zero, peak: zero + 1000, peakS: 1, windowS: 0.25 }
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
    const fall = beginFall(recent, { zero: 0, peak: 1000, peakS: 2, windowS: 1.5 }, settings)
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
    const fall = beginFall(recent, { zero: 0, peak: 1000, peakS: 1, windowS: 1.5 }, settings)
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
    const fall = beginFall(recent, { zero: 0, peak: 1010, peakS: 0.01, windowS: 0.25 }, settings)
    expect(fall.breakS).toBe(0.02)
  })
})
