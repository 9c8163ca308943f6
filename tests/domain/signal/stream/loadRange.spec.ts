import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createLoadRange } from '#domain/signal/stream/loadRange.ts'
import { blockAlone, cutStream } from '#tests/fakes/streams/cutStream.ts'

function rangeOf(forces: readonly number[], noise = 1) {
  const range = createLoadRange()
  range.setNoise(noise)
  const force = Float64Array.from(forces)
  const timeS = force.map((_, i) => i / 80)
  for (const [from, to] of cutStream(createRandom(3), force.length, 4))
    range.take(blockAlone(timeS, from, to, 1e7), blockAlone(force, from, to, 2.5), from, to)
  return range
}

describe('what can be load', () => {
  it('is all that a quiet stream holds, from its lowest to its highest', () => {
    expect(rangeOf([3, 1, 2, 5, 4]).since()).toEqual([1, 5])
    expect(rangeOf([-3]).since()).toEqual([-3, -3])
    expect(rangeOf([]).since()).toBeNull()
  })

  it('is no glitch of one or two samples, either way', () => {
    expect(rangeOf([1, 2, 73_000, 1, 2, 2]).since()).toEqual([1, 2])
    expect(rangeOf([1, 2, 73_000, 72_000, 1, 2]).since()).toEqual([1, 2])
    expect(rangeOf([1, 2, -73_000, 1, 2, 2]).since()).toEqual([1, 2])
    for (const waiting of [[73_000], [73_000, 72_000]]) expect(rangeOf([1, 2, ...waiting]).latest()).toBe(2)
  })

  it('is a step that stays, with its third sample', () => {
    expect(rangeOf([1, 2, 30_000, 30_001]).since()).toEqual([1, 2])
    expect(rangeOf([1, 2, 30_000, 30_001, 30_002]).since()).toEqual([1, 30_002])
  })

  it('is told by the noise', () => {
    expect(rangeOf([1, 1, 1, 12, 1, 1], 1).since()).toEqual([1, 1])
    expect(rangeOf([1, 1, 1, 12, 1, 1], 2).since()).toEqual([1, 12])
  })

  it('is asked for from one time to the next', () => {
    const range = createLoadRange()
    range.setNoise(1)
    const take = (...forces: number[]) => {
      const force = Float64Array.from(forces)
      range.take(force, force, 0, force.length)
    }
    expect(range.latest()).toBeNull()
    take(5, 6)
    expect([range.since(), range.since(), range.latest()]).toEqual([[5, 6], null, 6])
    take(7, 9_000)
    // It waits until the next sample tells.
    expect([range.since(), range.latest()]).toEqual([[7, 7], 7])
    take(8)
    expect([range.since(), range.latest()]).toEqual([[8, 8], 8])
  })
})
