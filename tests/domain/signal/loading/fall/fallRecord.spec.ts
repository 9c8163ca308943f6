import { describe, expect, it } from 'vitest'
import { beginFallRecord } from '#domain/signal/loading/fall/fallRecord.ts'
import { createRecentSamples } from '#domain/signal/stream/recentSamples.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
import { takeOne } from '#tests/fakes/streams/cutStream.ts'

/** A load of 1000 that falls to 100 in a straight line of `fallS` from second 1 on, sampled at 1 kHz. */
function recorded(fallS: number) {
  const load = (t: number) => (t < 1 ? 1000 : t > 1 + fallS ? 100 : 1000 - (900 * (t - 1)) / fallS)
  const recent = createRecentSamples()
  for (let i = 0; i <= 1002; i++) takeOne(recent, i / 1000, load(i / 1000))
  const record = beginFallRecord(recent, 1000)
  for (let i = 1003; i < 1400; i++) record.push(i / 1000, load(i / 1000))
  return record
}

describe('the time of a fall', () => {
  it.each([0.05, 0.1, 0.3])('of a straight one of %s s is that from 90 %% before to 10 %% above after', (fallS) => {
    // 1000 to 900 and 190 to 100 are left out: 710 of 900. A sample on either side more.
    expect(Math.abs(recorded(fallS).fallS(0, 1000, 100)! - (fallS * 710) / 900)).toBeLessThanOrEqual(0.002 + 1e-9)
  })

  it('is one interval where the load is gone with the next sample', () => {
    expect(recorded(1e-6).fallS(0, 1000, 100)).toBeCloseTo(0.001, 9)
  })

  it('cannot be told when the fall is not seen to its end', () => {
    expect(recorded(0.5).fallS(0, 1000, 100)).toBeNull()
  })

  it('is known as soon as it is down', () => {
    const recent = createRecentSamples()
    for (const [i, load] of [1000, 1000, 950, 500, 150].entries()) takeOne(recent, i / 1000, load)
    expect(beginFallRecord(recent, 2).fallS(0, 1000, 100)).toBeCloseTo(0.002, 9)
  })

  it('cannot be told when what is in memory of it begins below 90 %', () => {
    const recent = createRecentSamples()
    for (const [i, load] of [880, 500, 150, 100].entries()) takeOne(recent, i / 1000, load)
    expect(beginFallRecord(recent, 0).fallS(0, 1000, 100)).toBeNull()
  })

  it('cannot be told when nothing before it is in memory', () => {
    const recent = createRecentSamples()
    for (let i = 0; i < 5; i++) takeOne(recent, i / 1000, 100)
    expect(beginFallRecord(recent, 0).fallS(0, 1000, 100)).toBeNull()
  })
})

describe('the limits of the time of a fall', () => {
  const timeOf = (forces: readonly number[], { zero = 0, before = 1000, after = 100, ordinal = 1 } = {}) => {
    const recent = createRecentSamples()
    for (const [i, load] of forces.entries()) takeOne(recent, i / 1000, load)
    const timeS = beginFallRecord(recent, ordinal).fallS(zero, before, after)
    return timeS === null ? null : Math.round(timeS * 1000)
  }

  it('are 0.9 of the load before', () => {
    expect(timeOf([1000, 900, 100])).toBe(1)
    expect(timeOf([1000, 899.9, 100])).toBe(2)
    // Of the load, not of the force: 0.9 of 500 N above 500 N.
    expect(timeOf([1000, 950, 600], { zero: 500, after: 600 })).toBe(1)
    expect(timeOf([1000, 949.9, 600], { zero: 500, after: 600 })).toBe(2)
  })

  it('are a tenth of the fall above the load after it', () => {
    expect(timeOf([1000, 190, 100])).toBe(1)
    expect(timeOf([1000, 190.1, 100])).toBe(2)
    expect(limitOf((force) => timeOf([1000, force, 100]) === 1, 100, 800)).toBeCloseTo(190, 2)
  })

  it('are eight samples before the fall, and the first in memory', () => {
    const held = (low: number) => [1000, ...Array<number>(low).fill(850), 100]
    expect(timeOf(held(8), { ordinal: 8 })).toBe(9)
    expect(timeOf(held(9), { ordinal: 9 })).toBeNull()
  })

  it('are 8192 samples', () => {
    const record = (high: number) => {
      const recent = createRecentSamples()
      takeOne(recent, 0, 1000)
      const begun = beginFallRecord(recent, 0)
      for (let i = 1; i < high; i++) begun.push(i / 10_000, 950)
      begun.push(high / 10_000, 100)
      return begun.fallS(0, 1000, 100)
    }
    expect(record(8191)).toBeCloseTo(0.0001, 9)
    expect(record(8192)).toBeNull()
  })
})
