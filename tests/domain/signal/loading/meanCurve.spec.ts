import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createMeanCurve, mostMeans, samplesPerMean } from '#domain/signal/loading/meanCurve.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
import { cutStream, takeOne } from '#tests/fakes/streams/cutStream.ts'

describe('samples in a mean', () => {
  it('last 5 ms at least, and are one where samples are further apart or their distance is unknown', () => {
    expect([1, 0.1, 0.005, 0].map(samplesPerMean)).toEqual([1, 1, 1, 1])
    expect([0.0049, 0.003, 0.001, 0.0002, 0.0001].map(samplesPerMean)).toEqual([2, 2, 8, 32, 64])
  })
})

describe('the curve of means', () => {
  it.each([1, 1023, 1025, 200_000])('of %i samples on a line stays on it, in bounded memory', (samples) => {
    const curve = createMeanCurve()
    for (let i = 0; i < samples; i++) takeOne(curve, i / 100, 3 * i)
    const { timeS, force, samplesPerMean: perMean } = curve.means()
    expect(timeS.length).toBeLessThan(mostMeans)
    expect(timeS.length).toBe(Math.floor(samples / perMean))
    for (let i = 0; i < timeS.length; i++) {
      expect(Math.abs(force[i]! / 3 - timeS[i]! * 100)).toBeLessThan(1e-6)
      expect(Math.abs(timeS[i]! * 100 - (i * perMean + (perMean - 1) / 2))).toBeLessThan(1e-6)
    }
  })

  it('joins what it has when the interval is known, and tells every mean from then on', () => {
    const curve = createMeanCurve()
    for (let i = 0; i < 21; i++) takeOne(curve, i / 1000, i)
    const heard: [number, number][] = []
    curve.settle(0.001, (timeS, mean) => heard.push([timeS, mean]))
    for (let i = 21; i < 40; i++) takeOne(curve, i / 1000, i)
    // Of 21 samples the last five are joined as ((16.5 + 18.5) / 2 + 20) / 2: a mean of fewer, still on the line.
    expect([...curve.means().force]).toEqual([3.5, 11.5, 18.75, 24.5, 32.5])
    expect(curve.means().samplesPerMean).toBe(8)
    expect(heard.map(([, mean]) => mean)).toEqual([24.5, 32.5])
    expect(heard[0]![0]).toBeCloseTo(0.0245, 12)
  })

  it('still tells means of 5 ms when it keeps longer ones', () => {
    const curve = createMeanCurve()
    let heard = 0
    curve.settle(0.0025, () => {
      heard += 1
    })
    for (let i = 0; i < 4 * mostMeans; i++) takeOne(curve, i * 0.0025, i)
    expect(curve.means().samplesPerMean).toBe(8)
    expect(heard).toBe(2 * mostMeans)
  })

  it('is the same to the last bit however the samples are cut', () => {
    const timeS = Float64Array.from({ length: 30_000 }, (_, i) => i * 1e-4)
    const force = timeS.map((t) => 1000 * Math.sin(40 * t) + t)
    const begun = () => {
      const curve = createMeanCurve()
      curve.take(timeS, force, 0, 100)
      curve.settle(1e-4, () => {})
      return curve
    }
    const meansOf = (longest: number) => {
      const curve = begun()
      for (const [from, to] of cutStream(createRandom(longest), 29_900, longest))
        curve.take(timeS, force, 100 + from, 100 + to)
      return curve.means()
    }
    const whole = begun()
    whole.take(timeS, force, 100, 30_000)
    for (const longest of [1, 9, 1009]) expect(meansOf(longest)).toEqual(whole.means())
  })

  it('tells when a force was first reached, and can start anew', () => {
    const curve = createMeanCurve()
    for (let i = 0; i < 100; i++) takeOne(curve, i, 10 * i)
    expect(curve.firstReachedS(500)).toBe(50)
    expect(curve.firstReachedS(1e9)).toBe(99)
    curve.clear()
    expect(curve.means().timeS.length).toBe(0)
    expect(curve.firstReachedS(1)).toBeNaN()
  })
})

describe('the limits of the curve of means', () => {
  it('are 65,536 means, and 5 ms with a thousandth of room for the interval', () => {
    const curve = createMeanCurve()
    for (let i = 0; i < 65_535; i++) takeOne(curve, i, i)
    expect(curve.means()).toMatchObject({ samplesPerMean: 1, timeS: { length: 65_535 } })
    takeOne(curve, 65_535, 65_535)
    expect(curve.means()).toMatchObject({ samplesPerMean: 2, timeS: { length: 32_768 } })
    expect(limitOf((intervalS) => samplesPerMean(intervalS) === 1, 0.0049, 0.005)).toBeCloseTo(0.005 * 0.999, 9)
    expect(samplesPerMean(0.005 * (1 - 1e-3))).toBe(1)
    // A mean that is not full is kept as it is when the interval becomes known; alone, too.
    takeOne(curve, 65_536, 7)
    curve.settle(0.0025, () => {})
    expect(curve.means().timeS.length).toBe(32_769)
    expect(curve.means().force.at(-1)).toBe(7)
    curve.clear()
    expect([curve.means().timeS.length, curve.means().force.length]).toEqual([0, 0])
  })

  it('are one sample to a mean again after it has begun anew', () => {
    const curve = createMeanCurve()
    for (let i = 0; i < 65_536; i++) takeOne(curve, i, i)
    curve.clear()
    for (const force of [3, 5, 9]) takeOne(curve, force, force)
    expect([...curve.means().force]).toEqual([3, 5, 9])
    expect(curve.means().samplesPerMean).toBe(1)
  })

  it('keep the only sample that there is when the interval becomes known', () => {
    const curve = createMeanCurve()
    takeOne(curve, 2, 30)
    curve.settle(0.001, () => {})
    expect([...curve.means().force]).toEqual([30])
  })

  it('tell that a force was reached with the first mean, or with one that is not full', () => {
    const curve = createMeanCurve()
    takeOne(curve, 2, 30)
    takeOne(curve, 3, 40)
    expect(curve.firstReachedS(30)).toBe(2)
    curve.settle(0.001, () => {})
    takeOne(curve, 4, 0)
    expect(curve.firstReachedS(1000)).toBe(4)
  })
})
