import { describe, expect, it } from 'vitest'
import { fallWindowS, hasFallen } from '#domain/signal/loading/fall/fallRule.ts'
import { createRecentSamples } from '#domain/signal/stream/recentSamples.ts'

const settings = { breakDropShare: 0.4 }

/** Whether a load with these newest samples, at 100 Hz and above a level at rest of 0, has fallen from a peak of 1000 N. */
function fallen(forces: readonly number[], suddenlyFallen = 0, windowS = 0.25): boolean {
  const recent = createRecentSamples()
  const force = Float64Array.from(forces)
  recent.take(
    force.map((_, i) => i / 100),
    force,
    0,
    force.length,
  )
  const newest = forces.at(-1)!
  const memory = { recent, suddenlyFallen: () => suddenlyFallen }
  return hasFallen(memory, { force: newest, load: newest, peakLoad: 1000 }, settings, windowS)
}

describe('a fall', () => {
  // The rule of the trade: a fall from the running peak of at least a set share (here 40 %) within a set time.
  it('is one of 40 % of the peak within the window, from wherever the load stood', () => {
    expect(fallen([1000, 1000, 600])).toBe(true)
    expect(fallen([1000, 1000, 600.1])).toBe(false)
    expect(fallen([500, 500, 100])).toBe(true)
    expect(fallen([500, 500, 100.1])).toBe(false)
  })

  it('is none when it takes longer than the window', () => {
    const over = (samples: number) => Array.from({ length: samples + 1 }, (_, i) => 1000 - (400 * i) / samples)
    expect(fallen(over(25))).toBe(true)
    expect(fallen(over(27))).toBe(false)
  })

  // A bond that fails step by step is down just as far: most of the way, not all of it, must have been sudden.
  it('is one in steps, when 0.6 of the whole way down was sudden', () => {
    const slowly = Array.from({ length: 100 }, (_, i) => 1000 - 5 * i)
    expect(fallen([...slowly, 500], 300)).toBe(true)
    expect(fallen([...slowly, 500], 299.9)).toBe(false)
    expect(fallen([...slowly.slice(0, 79), 605], 395)).toBe(false)
    expect(fallen([...slowly.slice(0, 79), 600], 400)).toBe(true)
  })
})

describe('the window of a fall', () => {
  it('holds the sample before the newest of a slow device, too', () => {
    expect(fallWindowS({ breakDropWithinS: 0.25 }, 0.001)).toBe(0.25)
    expect(fallWindowS({ breakDropWithinS: 0.25 }, 1)).toBe(1.5)
    expect(fallWindowS({ breakDropWithinS: 0.25 }, 0)).toBe(0.25)
  })
})
