import { describe, expect, it } from 'vitest'
import { createSampleRing } from '#renderer/plots/live/sampleRing.ts'

const samples = (from: number, to: number) => {
  const timeS = Float64Array.from({ length: to - from }, (_, i) => from + i)
  return [timeS, timeS.map((time) => time * 10)] as const
}

const all = [-1e9, 1e9] as const

describe('createSampleRing', () => {
  it('keeps the newest samples in order when more come than it holds', () => {
    const ring = createSampleRing(5)
    ring.push(...samples(0, 3), all)
    ring.push(...samples(3, 9), all)
    expect(Array.from({ length: ring.length }, (_, i) => ring.timeAt(i))).toEqual([4, 5, 6, 7, 8])
    expect(ring.forceAt(4)).toBe(80)
  })

  it('finds the first sample at or after a time, across the place where the ring closes', () => {
    const ring = createSampleRing(5)
    ring.push(...samples(0, 8), all)
    expect(ring.indexFrom(-1)).toBe(0)
    expect(ring.indexFrom(5)).toBe(2)
    expect(ring.indexFrom(5.5)).toBe(3)
    expect(ring.indexFrom(7.1)).toBe(5)
  })

  it('starts afresh when the stream began again', () => {
    const ring = createSampleRing(8)
    ring.push(...samples(5, 8), all)
    ring.push(...samples(0, 2), all)
    expect(ring.length).toBe(2)
    expect(ring.timeAt(0)).toBe(0)
  })

  it('passes over a second sample at the same time, because a plot wants times that rise', () => {
    const ring = createSampleRing(8)
    ring.push(Float64Array.of(1, 1, 2), Float64Array.of(10, 11, 20), all)
    expect([ring.length, ring.forceAt(0), ring.forceAt(1)]).toEqual([2, 10, 20])
  })

  it('knows of each sample what of it can be load', () => {
    const ring = createSampleRing(8)
    ring.push(Float64Array.of(1, 2, 3), Float64Array.of(10, 73_000, -500), [9, 20])
    ring.push(Float64Array.of(4), Float64Array.of(30), null)
    expect([0, 1, 2, 3].map(ring.loadAt)).toEqual([10, 20, 9, Number.NaN])
    expect([0, 1, 2, 3].map(ring.forceAt)).toEqual([10, 73_000, -500, 30])
  })

  it('says which use is wrong', () => {
    expect(() => createSampleRing(1)).toThrow(RangeError)
    expect(() => createSampleRing(4).timeAt(0)).toThrow('there is no sample 0 among 0')
    expect(() => createSampleRing(4).push(Float64Array.of(1), Float64Array.of(), all)).toThrow(RangeError)
  })
})
