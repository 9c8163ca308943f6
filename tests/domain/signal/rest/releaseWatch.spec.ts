import { describe, expect, it } from 'vitest'
import { createReleaseWatch } from '#domain/signal/rest/releaseWatch.ts'

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
