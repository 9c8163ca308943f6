import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createLoadPeak } from '#domain/signal/loading/peak/loadPeak.ts'
import { createRecentSamples } from '#domain/signal/stream/recentSamples.ts'
import { cutStream } from '#tests/fakes/streams/cutStream.ts'

const near = { zero: 0, threshold: 50, share: 0.6, withinS: 60 }
const start = { highest: 60, highestS: -1, noise: 1 }

function peakOf(forces: readonly number[], options = near, rateHz = 100) {
  const peak = createLoadPeak(createRecentSamples(), start, options)
  const force = Float64Array.from(forces)
  const timeS = force.map((_, i) => i / rateHz)
  return { peak, left: peak.follow(timeS, force, 0, force.length, 0) }
}

describe('the peak', () => {
  it('is the highest sample as it is, the first of equals, however the samples are cut', () => {
    const random = createRandom(12)
    const force = Float64Array.from({ length: 3000 }, (_, i) => 1000 + Math.round(i / 4 + 60 * random.normal()))
    const timeS = force.map((_, i) => i / 10_000)
    const highest = force.reduce((most, value) => Math.max(most, value), 0)
    for (const longest of [1, 40, 3000]) {
      const peak = createLoadPeak(createRecentSamples(), start, { ...near, share: 0.1 })
      for (const [from, to] of cutStream(createRandom(longest), 3000, longest))
        for (let i = from; i < to; i++) i = peak.follow(timeS, force, i, to, i)
      expect([peak.force(), peak.timeS()]).toEqual([highest, timeS[force.indexOf(highest)]])
    }
  })

  it('is what the loading began with until a sample lies above it', () => {
    expect(peakOf([55, 60, 59]).peak.timeS()).toBe(-1)
    expect(peakOf([55, 60.1, 59]).peak.timeS()).toBe(0.01)
  })
})

describe('a load near its peak', () => {
  it('lies above the share of it, and above the start threshold', () => {
    expect(peakOf([100, 1000, 601, 600]).left).toBe(3)
    expect(peakOf([100, 1000, 600.1, 1001]).left).toBe(4)
    expect(peakOf([50, 49.9]).left).toBe(1)
    // Shares count from the level at rest: 0.6 of 500 N above 500 N.
    expect(peakOf([1000, 801, 800], { ...near, zero: 500 }).left).toBe(2)
  })

  it('is no longer one a minute after it', () => {
    const held = [1000, ...Array.from({ length: 100 }, () => 990)]
    expect(peakOf(held, near, 1).left).toBe(60)
  })

  it('is left, too, where the samples before the peak are about to be forgotten', () => {
    const { peak, left } = peakOf([1000, ...Array.from({ length: 3000 }, () => 990)], near, 10_000)
    expect(left).toBe(1024)
    expect([peak.slopeIsDue(1024), peak.slopeIsDue(1025)]).toEqual([false, true])
  })
})

describe('the slope before the peak', () => {
  it('is that of the ramp, and stays when a later one cannot be told', () => {
    const recent = createRecentSamples()
    const peak = createLoadPeak(recent, start, near)
    const timeS = Float64Array.from({ length: 500 }, (_, i) => i / 1000)
    const force = timeS.map((t) => 100 + 2000 * t)
    recent.take(timeS, force, 0, 500)
    expect(peak.slope()).toBeNull()
    peak.follow(timeS, force, 0, 500, 0)
    peak.keepSlope()
    expect(peak.slope()).toBeCloseTo(2000, 6)
    peak.keepSlope()
    expect(peak.slope()).toBeCloseTo(2000, 6)
  })
})

describe('a peak whose slope is still to be kept', () => {
  const flat = (length: number, value: number) => Float64Array.from({ length }, () => value)
  const times = (length: number) => Float64Array.from({ length }, (_, i) => i / 10_000)

  it('is none that the loading began with', () => {
    const recent = createRecentSamples()
    recent.take(times(3000), flat(3000, 55), 0, 3000)
    const peak = createLoadPeak(recent, start, near)
    expect(peak.follow(times(3000), flat(3000, 55), 0, 3000, 0)).toBe(3000)
    expect(peak.slopeIsDue(5000)).toBe(false)
    peak.keepSlope()
    expect(peak.slope()).toBeNull()
  })

  it('is due 1024 samples after it, wherever it lies, and once only', () => {
    for (const at of [0, 1, 500]) {
      const force = flat(3000, 990)
      force[at] = 1000
      const peak = createLoadPeak(createRecentSamples(), { ...start, highest: 990 }, near)
      expect(peak.follow(times(3000), force, 0, 3000, 0)).toBe(at + 1024)
      expect([at + 1024, at + 1025].map(peak.slopeIsDue)).toEqual([false, true])
      peak.keepSlope()
      expect(peak.slopeIsDue(9000)).toBe(false)
    }
  })

  it('lies at the ordinal of its sample, wherever its block begins', () => {
    const force = Float64Array.from({ length: 3000 }, (_, i) => (i === 600 ? 1000 : 990))
    const peak = createLoadPeak(createRecentSamples(), { ...start, highest: 990 }, near)
    // The sample 500 of the block is the 20th of the loading.
    expect(peak.follow(times(3000), force, 500, 3000, 20)).toBe(600 + 1024)
  })

  it('is looked for in the samples up to the end of a block, not in the next', () => {
    const peak = createLoadPeak(createRecentSamples(), start, near)
    expect(peak.follow(times(3), Float64Array.of(70, 80, 90), 0, 2, 0)).toBe(2)
    expect(peak.force()).toBe(80)
  })

  it('is a minute old by its own time', () => {
    const peak = createLoadPeak(createRecentSamples(), { ...start, highestS: 1000 }, near)
    expect([1059.9, 1060].map((timeS) => peak.isNear(timeS, 60))).toEqual([true, false])
  })
})
