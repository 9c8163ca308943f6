import { describe, expect, it } from 'vitest'
import { createReleaseWatch } from '#domain/signal/rest/releaseWatch.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

const broken = { zero: 5, peak: 5005, threshold: 50, noise: 1 }

/** When the release is noticed in a force sampled at 80 Hz; null: never in 30 s. */
function releasedS(force: (timeS: number) => number): number | null {
  const watch = createReleaseWatch(broken)
  const timeS = Float64Array.from({ length: 30 * 80 }, (_, i) => i / 80)
  const at = watch.take(timeS, timeS.map(force), 0, timeS.length)
  return timeS[at] ?? null
}

describe('after a break', () => {
  it('the bench is free when the force has come back to its zero', () => {
    expect(releasedS((t) => (t < 4 ? 300 - 20 * t : 8))).toBeCloseTo(4.2, 1)
  })

  it('friction that changes keeps it waiting', () => {
    expect(releasedS((t) => 300 + 50 * t)).toBeNull()
  })

  it('a force that stands still for three seconds is the new zero', () => {
    expect(releasedS(() => 300)).toBeCloseTo(3, 1)
  })

  it('a load beyond 60 % of the last peak is a loading', () => {
    expect(releasedS((t) => 300 + 1000 * t)).toBeCloseTo(2.75, 1)
  })
})

describe('the limits of a release', () => {
  type Rule = Partial<typeof broken>
  const at = (force: (timeS: number) => number, rule: Rule = {}, rateHz = 1000): number | null => {
    const watch = createReleaseWatch({ ...broken, ...rule })
    const timeS = Float64Array.from({ length: 12 * rateHz }, (_, i) => i / rateHz)
    const index = watch.take(timeS, timeS.map(force), 0, timeS.length)
    return timeS[index] ?? null
  }
  /** Moves about enough to be no new zero. */
  const rubbing = (aboutN: number) => (t: number) => aboutN + 200 * Math.abs((t % 1) - 0.5)

  it('are 0.2 s and three samples near the zero', () => {
    // Back at 1 s for so long.
    const back = (forS: number) => (t: number) => (t >= 1 && t < 1 + forS ? 5 : rubbing(600)(t))
    expect(limitOf((forS) => at(back(forS)) !== null, 0.05, 0.5)).toBeCloseTo(0.2, 2)
    expect(at((t) => (t >= 1 ? 5 : rubbing(600)(t)), {}, 4)).toBe(1.5)
    expect(at((t) => (t >= 1 ? 5 : rubbing(600)(t)), {}, 8)).toBe(1.25)
    expect(at(() => 5, {}, 10)).toBe(0.2)
    // From the first sample on, wherever the clock stands.
    const watch = createReleaseWatch(broken)
    expect(watch.take(Float64Array.of(100, 101, 102), Float64Array.of(5, 5, 5), 0, 3)).toBe(2)
  })

  it('are the threshold or 0.005 of the last load from the zero', () => {
    const near = (rule: Rule) =>
      limitOf((byN) => (at((t) => (t < 0.5 ? 900 : 5 + byN + 1e-9 * t), rule) ?? 9) < 1, 0, 200)
    expect(near({ threshold: 50 })).toBeCloseTo(50, 3)
    expect(near({ threshold: 10 })).toBeCloseTo(0.005 * 5000, 3)
    expect(at((t) => (t < 0.5 ? 900 : 5 + 50), { threshold: 50 })).toBeLessThan(1)
    expect(limitOf((byN) => (at((t) => (t < 0.5 ? 900 : 5 - byN), { threshold: 50 }) ?? 9) < 1, 0, 200)).toBeCloseTo(
      50,
      3,
    )
  })

  it('are three seconds without moving: by ten noise SDs, half a threshold or 0.002 of the last load', () => {
    expect(at(() => 600)).toBeCloseTo(3, 9)
    const moves = (rule: Rule) =>
      limitOf((byN) => at((t) => 600 + (byN / 2) * Math.sin(40 * t), rule) === null, 0.1, 100)
    expect(moves({ noise: 4, threshold: 20 })).toBeCloseTo(40, 1)
    expect(moves({ noise: 1, threshold: 60 })).toBeCloseTo(30, 1)
    expect(moves({ noise: 0.1, threshold: 2 })).toBeCloseTo(0.002 * 5000, 1)
    const turning = (byN: number) => at((t) => 600 + (Math.round(t * 1000) % 2 === 0 ? 0 : byN), { noise: 4 })
    expect([40, 40.001].map(turning)).toEqual([3, null])
  })

  it('begin anew with every move', () => {
    // Stands from 2 s on, after a step.
    expect(at((t) => (t < 2 ? 600 : 900))).toBeCloseTo(5, 2)
    expect(at((t) => (t < 2 ? 900 : 600))).toBeCloseTo(5, 2)
  })

  it('are three samples in a row above 0.6 of the last load', () => {
    const loaded = (toN: number) => (t: number) => (t < 1 ? rubbing(600)(t) : toN + rubbing(0)(t))
    expect(limitOf((toN) => at(loaded(toN)) !== null, 2000, 4000)).toBeCloseTo(5 + 0.6 * 5000 - 100, -1)
    const spiking = (samples: number) => (t: number) => {
      const k = Math.round(t * 1000)
      return k >= 1000 && k < 1000 + samples ? 4000 : rubbing(600)(t)
    }
    expect([2, 3].map((samples) => at(spiking(samples)))).toEqual([null, 1.002])
    const threeAt = (toN: number) => (t: number) =>
      [1000, 1001, 1002].includes(Math.round(t * 1000)) ? toN : rubbing(600)(t)
    expect([3005, 3005.001].map((toN) => at(threeAt(toN)))).toEqual([null, 1.002])
    const first = createReleaseWatch(broken)
    expect(first.take(Float64Array.of(0, 1, 2), Float64Array.of(4000, 4500, 4900), 0, 3)).toBe(2)
    const twice = (t: number) => ([1000, 1001, 1003, 1004].includes(Math.round(t * 1000)) ? 4000 : rubbing(600)(t))
    expect(at(twice)).toBeNull()
  })
})
