import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createRecentSamples, recentCapacity } from '#domain/signal/stream/recentSamples.ts'
import { takeOne } from '#tests/fakes/streams/cutStream.ts'

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
