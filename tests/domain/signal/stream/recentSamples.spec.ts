import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createRecentSamples, recentCapacity } from '#domain/signal/stream/recentSamples.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
import { blockAlone, cutStream, takeOne } from '#tests/fakes/streams/cutStream.ts'

describe('the line through recent samples', () => {
  it('is that of JCGM 100:2008 H.3', () => {
    // Data of H.3; intercept, slope, their SEs and s recomputed with R 4.2.2: summary(lm(bk ~ I(tk - 20))), slope
    // 0.00218270 (SE 0.00066794), s 0.00349756. The GUM prints 0.002 18 (0.000 67) and 0.0035 (from memory).
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511]
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16]
    // A large common offset of both must do no harm.
    for (const [offsetT, offsetB] of [
      [0, 0],
      [1e5, 1e4],
    ] as const) {
      const recent = createRecentSamples()
      t.forEach((time, i) => {
        takeOne(recent, time + offsetT, b[i]! + offsetB)
      })
      const line = recent.lineBefore(10, 100, 3)!
      expect(line.slope).toBeCloseTo(0.0021827, 7)
      expect(line.slopeSE).toBeCloseTo(0.00066794, 7)
      expect(line.residualSD).toBeCloseTo(0.00349756, 7)
      expect(line.samples).toBe(11)
    }
  })

  it('needs three samples', () => {
    const recent = createRecentSamples()
    takeOne(recent, 0, 0)
    takeOne(recent, 1, 5)
    expect(recent.lineBefore(1, 10, 5)).toBeNull()
  })
})

describe('the sliding maximum', () => {
  it('is that of a plain search, also when the ring has gone round', () => {
    const random = createRandom(3)
    const recent = createRecentSamples()
    const times: number[] = []
    const forces: number[] = []
    let now = 0
    for (let i = 0; i < 3 * recentCapacity; i++) {
      now += random.between(0.0001, 0.002)
      times.push(now)
      forces.push(random.normal())
      takeOne(recent, now, forces[i]!)
      if (i % 97 === 0) {
        let highest = forces[i]!
        for (let k = i - 1; k >= 0 && (now - times[k]! <= 0.05 || k === i - 1); k--)
          highest = Math.max(highest, forces[k]!)
        expect(recent.windowHighest(0.05)).toBe(highest)
      }
    }
    expect(recent.holds(3 * recentCapacity - 1)).toBe(true)
    expect(recent.holds(2 * recentCapacity - 1)).toBe(false)
  })

  it('sees the sample before a slow one, but not across a long silence', () => {
    const recent = createRecentSamples()
    takeOne(recent, 0, 900)
    takeOne(recent, 0.9, 100)
    expect(recent.windowHighest(0.25)).toBe(900)
    takeOne(recent, 5, 50)
    expect(recent.windowHighest(0.25)).toBe(50)
  })

  it('finds the last sample above a force', () => {
    const recent = createRecentSamples()
    for (const [i, force] of [1, 9, 5, 2].entries()) takeOne(recent, i, force)
    expect(recent.lastAtOrAbove(5)).toBe(2)
    expect(recent.lastAtOrAbove(10)).toBe(-1)
  })
})

describe('recent samples', () => {
  /** Samples at uneven times, with silences among them, and what a list of the newest 4096 of them says. */
  function both(count: number, seed: number) {
    const random = createRandom(seed)
    const recent = createRecentSamples()
    const timeS: number[] = []
    const force: number[] = []
    for (let i = 0; i < count; i++) {
      timeS.push((timeS.at(-1) ?? 5) + (random.unit() < 0.005 ? 1.5 * random.unit() : random.between(0.0001, 0.002)))
      force.push(1000 + Math.round(20 * random.normal()) / 2)
    }
    const [times, forces] = [Float64Array.from(timeS), Float64Array.from(force)]
    // In pieces of odd lengths, as a stream brings them.
    for (const [from, to] of count === 9000 ? cutStream(random, count, 150) : [[0, count] as const])
      recent.take(blockAlone(times, from, to, 1e9), blockAlone(forces, from, to, 1e9), from, to)
    return { recent, timeS, force, oldest: Math.max(0, count - recentCapacity), random }
  }

  it.each([1, 2, 40, 64, 65, 4096, 4097, 9000])('of %i are found as in a list of them', (count) => {
    const { recent, timeS, force, oldest, random } = both(count, count)
    const newest = count - 1
    expect(recent.count()).toBe(count)
    expect([oldest - 1, oldest, newest, count].map(recent.holds)).toEqual([false, true, true, false])
    expect([recent.timeAt(oldest), recent.forceAt(newest)]).toEqual([timeS[oldest], force[newest]])
    for (const windowS of [0, 0.0005, 0.01, 0.07, 0.3, 1, 100]) {
      const inside = timeS.flatMap((at, i) =>
        i >= oldest &&
        (i === newest || timeS[newest]! - at <= windowS || (i === newest - 1 && timeS[newest]! - at <= 1))
          ? [force[i]!]
          : [],
      )
      // Everything from the newest back to the first that lies outside.
      expect(recent.windowHighest(windowS)).toBe(Math.max(...inside))
    }
    for (const wanted of [960, 1000, 1020, 1200])
      expect(recent.lastAtOrAbove(wanted)).toBe(force.findLastIndex((value, i) => value >= wanted && i >= oldest))
    for (let trial = 0; trial < 20; trial++) {
      const at = oldest + Math.floor(random.between(0, count - oldest))
      const spanS = [0, 0.004, 0.5][trial % 3]!
      const least = [1, 3, 6][trial % 3]!
      const members = timeS.flatMap((time, i) =>
        i <= at && i >= oldest && (timeS[at]! - time <= spanS || at - i < least) ? [i] : [],
      )
      const mean = members.reduce((sum, i) => sum + force[i]!, 0) / members.length
      expect(recent.meanBefore(at, spanS, least)).toBeCloseTo(mean, 8)
      const line = recent.lineBefore(at, spanS, least)
      expect(line?.samples ?? null).toBe(members.length < 3 ? null : members.length)
      if (line === null) continue
      const meanT = members.reduce((sum, i) => sum + timeS[i]!, 0) / members.length
      const stt = members.reduce((sum, i) => sum + (timeS[i]! - meanT) ** 2, 0)
      const stf = members.reduce((sum, i) => sum + (timeS[i]! - meanT) * (force[i]! - mean), 0)
      expect(line.slope / (stf / stt)).toBeCloseTo(1, 6)
      const squares = members.reduce((sum, i) => sum + (force[i]! - mean - (stf / stt) * (timeS[i]! - meanT)) ** 2, 0)
      expect(line.residualSD).toBeCloseTo(Math.sqrt(squares / (members.length - 2)), 6)
      expect(line.slopeSE / Math.sqrt(squares / (members.length - 2) / stt)).toBeCloseTo(1, 6)
    }
  })

  it('have the highest of a window wherever it stands, and of the samples that are in memory', () => {
    for (const count of [300, recentCapacity + 100]) {
      const timeS = Float64Array.from({ length: count }, (_, i) => i / 64)
      const oldest = Math.max(0, count - recentCapacity)
      for (let back = 0; back < count; back += back < 200 || back > count - 200 ? 1 : 37) {
        const at = count - 1 - back
        const recent = createRecentSamples()
        recent.take(
          timeS,
          timeS.map((_, i) => (i === at ? 1 : 0)),
          0,
          count,
        )
        expect(recent.windowHighest(1e9)).toBe(at >= oldest ? 1 : 0)
        if (back > 1) expect([(back - 1) / 64, back / 64].map(recent.windowHighest)).toEqual([0, at >= oldest ? 1 : 0])
      }
    }
  })

  it('are averaged and fitted over the whole of a span, its first sample too', () => {
    const recent = createRecentSamples()
    for (const [i, force] of [100, 3, 5, 1].entries()) takeOne(recent, i / 4, force)
    expect([0.5, 0.75].map((spanS) => recent.meanBefore(3, spanS, 1))).toEqual([3, 109 / 4])
    expect(recent.lineBefore(3, 0.5, 1)?.samples).toBe(3)
    expect(recent.lineBefore(3, 0.75, 1)?.samples).toBe(4)
  })

  it('need a silence of more than a second to be forgotten with the one before', () => {
    const seen = (silenceS: number) => {
      const recent = createRecentSamples()
      takeOne(recent, 0, 900)
      takeOne(recent, silenceS, 100)
      return recent.windowHighest(0.25) === 900
    }
    expect(limitOf(seen, 0.5, 3)).toBeCloseTo(1, 4)
    expect(seen(1)).toBe(true)
  })
})
