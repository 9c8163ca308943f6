import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { cutToRange, samplesIn, thinByMinMax } from '#domain/signal/stream/thinning.ts'

function noisyCurve(samples: number, seed: number) {
  const random = createRandom(seed)
  return {
    timeS: Float64Array.from({ length: samples }, (_, i) => i / 100),
    force: Float64Array.from({ length: samples }, () => random.normal()),
  }
}

describe('thinning', () => {
  it.each([4, 5, 10, 101, 999])('to %i points keeps ends, highest and lowest, order and real samples', (points) => {
    for (let seed = 1; seed <= 20; seed++) {
      const curve = noisyCurve(1000 + seed, seed)
      const thin = thinByMinMax(curve, points)
      expect(thin.timeS.length).toBeLessThanOrEqual(points)
      expect(Math.max(...thin.force)).toBe(Math.max(...curve.force))
      expect(Math.min(...thin.force)).toBe(Math.min(...curve.force))
      expect(thin.timeS[0]).toBe(curve.timeS[0])
      expect(thin.timeS.at(-1)).toBe(curve.timeS.at(-1))
      expect(thin.timeS.every((t, i) => i === 0 || t > thin.timeS[i - 1]!)).toBe(true)
      expect(thin.force).toEqual(thin.timeS.map((t) => curve.force[Math.round(t * 100)]!))
    }
  })

  it('hands a short curve back as it is', () => {
    const curve = noisyCurve(50, 1)
    expect(thinByMinMax(curve, 50)).toBe(curve)
  })

  it('takes one sample for a stretch in which all are equal', () => {
    const timeS = Float64Array.from({ length: 102 }, (_, i) => i)
    const thin = thinByMinMax({ timeS, force: new Float64Array(102) }, 11)
    expect([...thin.timeS]).toEqual([0, 1, 26, 51, 76, 101])
  })

  it('refuses arrays of unequal length and too few points', () => {
    expect(() => thinByMinMax({ timeS: new Float64Array(3), force: new Float64Array(2) }, 10)).toThrow(RangeError)
    expect(() => thinByMinMax(noisyCurve(10, 1), 3)).toThrow(RangeError)
  })
})

describe('cutting to a range', () => {
  it('keeps one sample beyond either edge', () => {
    const { timeS } = cutToRange(noisyCurve(100, 1), 0.305, 0.5)
    expect([...timeS].map((t) => Math.round(t * 100))).toEqual([
      30, 31, 32, 33, 34, 35, 36, 37, 38, 39, 40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 50,
    ])
  })

  it('gives everything without limits and nothing but an edge outside the curve', () => {
    const curve = noisyCurve(10, 1)
    expect(cutToRange(curve, null, null).timeS.length).toBe(10)
    expect(cutToRange(curve, 5, 6).timeS.length).toBe(1)
    expect(cutToRange({ timeS: new Float64Array(0), force: new Float64Array(0) }, 0, 1).timeS.length).toBe(0)
  })
})

describe('samplesIn', () => {
  const timeS = Float64Array.of(0, 1, 2, 3, 4)
  it('takes one sample more on either side', () => expect(samplesIn(timeS, 1.5, 2.5)).toEqual({ from: 1, to: 4 }))
  it('ends with the curve', () => expect(samplesIn(timeS, -5, 50)).toEqual({ from: 0, to: 5 }))
})

describe('what thinning keeps', () => {
  it('is as many as it may where extremes differ in every stretch, the last before the end among them', () => {
    // Zigzag: of 100 inner samples in four stretches the lowest and the highest of each.
    const timeS = Float64Array.from({ length: 102 }, (_, i) => i)
    const force = timeS.map((i) => (i % 2 === 0 ? i : -i))
    const thin = thinByMinMax({ timeS, force }, 10)
    expect([...thin.timeS]).toEqual([0, 24, 25, 49, 50, 74, 75, 99, 100, 101])
  })
})
