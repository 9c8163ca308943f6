import { describe, expect, it } from 'vitest'
import { loadImpulse, trapezoidArea, workAtSpeed, workByDisplacement } from '#domain/signal/events/area.ts'

describe('area under points', () => {
  it('is that of scipy', () => {
    // scipy 1.17.1: scipy.integrate.trapezoid([0,12.5,90,140,333,281.5], [0,0.4,1.1,1.5,2.75,4]) = 764.0625
    const x = Float64Array.of(0, 0.4, 1.1, 1.5, 2.75, 4)
    expect(trapezoidArea(x, Float64Array.of(0, 12.5, 90, 140, 333, 281.5))).toBeCloseTo(764.0625, 10)
  })

  it('counts a way back against', () => {
    expect(trapezoidArea(Float64Array.of(0, 2, 1), Float64Array.of(4, 4, 4))).toBe(4)
  })

  it('wants two finite points of one length at least', () => {
    expect(() => trapezoidArea(Float64Array.of(1), Float64Array.of(1))).toThrow(RangeError)
    expect(() => trapezoidArea(Float64Array.of(1, 2), Float64Array.of(1))).toThrow(RangeError)
    expect(() => trapezoidArea(Float64Array.of(1, 2), Float64Array.of(1, Number.NaN))).toThrow(RangeError)
  })
})

/** A ramp of 300 N/s from 1 s on above a level of 50 N, in means of eight samples at 1 kHz. */
function ramp(untilS: number) {
  const timeS = Float64Array.from({ length: Math.ceil((untilS - 1) / 0.008) + 20 }, (_, i) => 1.0035 + 0.008 * i)
  const force = timeS.map((t) => (t + 0.0035 < untilS ? 50 + 300 * (t - 1) : 80))
  return { timeS, force, zero: 50, onsetS: 1, intervalS: 0.001, samplesPerMean: 8 }
}

describe('area under load and time', () => {
  it('is that of the triangle under a ramp, whatever the level at rest', () => {
    // 300 N/s over 10 s: 300 x 10² / 2 = 15,000 N s. The last mean misses up to 8 ms of a slope: 3000 N x 8 ms x 8 ms / 2 a part.
    expect(loadImpulse(ramp(11), 11)! / 15_000).toBeCloseTo(1, 5)
    const { force, ...rest } = ramp(11)
    expect(loadImpulse({ ...rest, force: force.map((f) => f + 1000), zero: 1050 }, 11)! / 15_000).toBeCloseTo(1, 5)
  })

  it('counts no mean that reaches beyond its end', () => {
    // Means of eight samples at 8, 16, 24 ms with half of them 3.5 ms before and after: the third ends at 27.5 ms.
    const curve = {
      timeS: Float64Array.of(0.008, 0.016, 0.024),
      force: Float64Array.of(100, 100, 900),
      ...{ zero: 0, onsetS: 0, intervalS: 0.001, samplesPerMean: 8 },
    }
    // From nothing to 100 N in 8 ms, then 100 N for 19 ms.
    expect(loadImpulse(curve, 0.027)).toBeCloseTo(0.4 + 1.9, 9)
    // From half a sample later on it does: 100 N to 900 N in 8 ms, then 900 N for 3.6 ms, and for 4 ms.
    expect(loadImpulse(curve, 0.0276)).toBeCloseTo(0.4 + 0.8 + 4 + 3.24, 9)
    expect(loadImpulse(curve, 0.028)).toBeCloseTo(0.4 + 0.8 + 4 + 3.6, 9)
  })

  it('takes a mean that ends with it, and rises to the first from nothing', () => {
    const curve = {
      timeS: Float64Array.of(0.5, 1, 1.5),
      force: Float64Array.of(10, 30, 80),
      ...{ zero: 0, onsetS: 0, intervalS: 0.5, samplesPerMean: 1 },
    }
    // Triangle 10 x 0.5 / 2, then (10 + 30) / 4 and (30 + 80) / 4.
    expect(loadImpulse(curve, 1.5)).toBeCloseTo(2.5 + 10 + 27.5, 12)
    // A mean before the onset has nothing to rise from.
    expect(loadImpulse({ ...curve, onsetS: 0.75 }, 1.5)).toBeCloseTo(37.5, 12)
  })

  it('is not known of a curve that ends at once', () => {
    expect(loadImpulse(ramp(11), 1.01)).toBeNull()
  })
})

describe('work', () => {
  it('at a constant speed is the area under load and time times the speed', () => {
    // 15,000 N s at 0.1 mm/s: 3000 N at the end of 1 mm, 3000 x 1 / 2 = 1500 N mm = 1.5 J.
    expect(workAtSpeed(15_000, 0.1)).toBeCloseTo(1.5, 12)
    expect(() => workAtSpeed(15_000, 0)).toThrow(RangeError)
  })

  it('by displacement is the area under load and displacement, whichever way the gauge counts', () => {
    // scipy 1.17.1: scipy.integrate.trapezoid([0,100,400,900], [0,0.1,0.2,0.5]) / 1000 = 0.225
    const loadN = Float64Array.of(0, 100, 400, 900)
    const mm = Float64Array.of(0, 0.1, 0.2, 0.5)
    expect(workByDisplacement(mm, loadN)).toBeCloseTo(0.225, 12)
    expect(
      workByDisplacement(
        mm.map((x) => 12 - x),
        loadN,
      ),
    ).toBeCloseTo(0.225, 12)
  })
})

describe('the way of a gauge', () => {
  it('is that from its first to its last point, whatever it does between', () => {
    const joules = (...mm: number[]) => workByDisplacement(Float64Array.from(mm), Float64Array.of(0, 1000, 2000))
    // Out by 0.2 mm at 500 N on average, then back by 0.3 mm at 1500 N: -0.1 + 0.45 J.
    expect(joules(0, -0.2, 0.1)).toBeCloseTo(0.35, 12)
    // The same, counted the other way: it ends 0.2 mm below where it began. 0.3 mm at 500 N less 0.1 mm at 1500 N.
    expect(joules(0.3, 0, 0.1)).toBeCloseTo(0)
    expect(joules(0.4, 0, 0.1)).toBeCloseTo(0.2 - 0.15, 12)
    // Back where it began: 0.1 mm at 500 N less 0.1 mm at 1500 N.
    expect(joules(0, 0.1, 0)).toBeCloseTo(-0.1, 12)
  })
})
