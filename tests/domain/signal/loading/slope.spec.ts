import { describe, expect, test } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { slopeOfCurve } from '#domain/signal/loading/slope.ts'

const every = (intervalS: number, count: number) => Float64Array.from({ length: count }, (_, i) => i * intervalS)
const force = Float64Array.from({ length: 24 }, (_, i) => (i * i * 7) % 23)

describe('slopeOfCurve', () => {
  // scipy 1.17.1: savgol_filter([(i*i*7) % 23 for i in range(24)], 7, 1, deriv=1, delta=0.0125, mode='interp')
  const savgol = [
    271.4285714285714, 271.4285714285714, 271.4285714285714, 271.42857142857156, 208.57142857142858, 80.00000000000001,
    -48.571428571428626, -111.42857142857146, -42.8571428571429, -40.00000000000003, -37.14285714285714,
    31.428571428571423, -31.42857142857143, 37.14285714285713, 40.000000000000014, 42.85714285714289,
    111.42857142857144, 48.5714285714286, -80.00000000000004, -208.5714285714286, -271.42857142857156,
    -271.4285714285715, -271.4285714285715, -271.4285714285715,
  ]
  test('over seven even samples is scipy.signal.savgol_filter of degree 1, ends and all', () => {
    const { timeS, force: slope } = slopeOfCurve({ timeS: every(0.0125, 24), force }, 0.075)
    expect(timeS).toEqual(every(0.0125, 24))
    for (const [i, value] of savgol.entries()) expect(slope[i]).toBeCloseTo(value, 9)
  })

  test('away from the ends is that of degree 2 as well', () => {
    // scipy 1.17.1: savgol_filter(x, 7, 2, deriv=1, delta=0.0125)[3:9]
    const expected = [
      271.42857142857076, 208.57142857142767, 79.99999999999889, -48.57142857142955, -111.42857142857243,
    ]
    const { force: slope } = slopeOfCurve({ timeS: every(0.0125, 24), force }, 0.075)
    for (const [k, value] of expected.entries()) expect(slope[3 + k]).toBeCloseTo(value, 8)
  })

  test('over uneven samples is numpy.polyfit through those in the window', () => {
    const timeS = Float64Array.of(0, 0.011, 0.019, 0.032, 0.04, 0.052, 0.061, 0.07, 0.082, 0.089, 0.1)
    const values = Float64Array.of(3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5)
    // numpy 2.4.6: c = clip(t[i], 0.02, 0.08); m = abs(t - c) <= 0.02 + 1e-9; numpy.polyfit(t[m], v[m], 1)[0]
    const expected = [
      32.57900897385873, 32.57900897385873, 32.57900897385873, 167.75032509752916, 394.7368421052635, 73.093220338983,
      -166.66666666666652, -91.53065725628572, 32.3741007194245, 32.3741007194245, 32.3741007194245,
    ]
    const { force: slope } = slopeOfCurve({ timeS, force: values }, 0.04)
    for (const [i, value] of expected.entries()) expect(slope[i]).toBeCloseTo(value, 8)
  })

  test('of a straight line is its slope at every sample, however far from zero it lies', () => {
    const timeS = every(0.001, 5000).map((time, i) => 1e6 + time + 0.0002 * ((i * 7919) % 3))
    const line = timeS.map((time) => 2e6 - 250 * (time - 1e6))
    for (const value of slopeOfCurve({ timeS, force: line }, 0.05).force) expect(value).toBeCloseTo(-250, 4)
  })

  test('never reaches over a gap, and leaves out what is too short to have a slope', () => {
    const timeS = Float64Array.of(...every(0.01, 50), 3, 3.01, ...every(0.01, 50).map((time) => 6 + time))
    const steps = timeS.map((time) => (time < 1 ? 100 * time : time < 5 ? 9999 : -40 * time))
    const slope = slopeOfCurve({ timeS, force: steps }, 0.1)
    expect(slope.timeS).toEqual(Float64Array.of(...timeS.subarray(0, 50), ...timeS.subarray(52)))
    for (const [i, value] of slope.force.entries()) expect(value).toBeCloseTo(i < 50 ? 100 : -40, 8)
  })

  test('takes the three nearest samples where the window holds fewer', () => {
    const timeS = every(0.01, 40)
    const line = timeS.map((time) => 70 * time)
    for (const value of slopeOfCurve({ timeS, force: line }, 0.001).force) expect(value).toBeCloseTo(70, 8)
  })

  test('takes the whole stretch where the window is longer', () => {
    // numpy 2.4.6: numpy.polyfit([0, 1, 2, 3], [1, 0, 4, 3], 1)[0] = 1.0
    const slope = slopeOfCurve({ timeS: every(1, 4), force: Float64Array.of(1, 0, 4, 3) }, 100)
    for (const value of slope.force) expect(value).toBeCloseTo(1, 12)
  })

  test('refuses a window that is none, and takes a curve that is none', () => {
    for (const bad of [0, -1, Number.NaN])
      expect(() => slopeOfCurve({ timeS: every(1, 24), force }, bad)).toThrow(RangeError)
    expect(slopeOfCurve({ timeS: every(1, 2), force: every(1, 2) }, 1).timeS).toHaveLength(0)
  })
})

describe('slopeOfCurve of uneven samples', () => {
  /** Straight line of least squares through samples, as it is defined. */
  const lineSlope = (points: readonly (readonly [t: number, f: number])[]) => {
    const mean = (pick: 0 | 1) => points.reduce((sum, point) => sum + point[pick], 0) / points.length
    const [meanT, meanF] = [mean(0), mean(1)]
    const stf = points.reduce((sum, [t, f]) => sum + (t - meanT) * (f - meanF), 0)
    return stf / points.reduce((sum, [t]) => sum + (t - meanT) ** 2, 0)
  }

  /** The rule in plain words: the samples in the window, which stays within the stretch; or a sample and its neighbours. */
  const plainly = (points: [number, number][], windowS: number) =>
    points.map(([t], i) => {
      const centre = Math.min(Math.max(t, points[0]![0] + windowS / 2), points.at(-1)![0] - windowS / 2)
      const inside = points.filter(([at]) => Math.abs(at - centre) <= windowS / 2 + 1e-9)
      const first = Math.min(Math.max(i - 1, 0), points.length - 3)
      return lineSlope(inside.length >= 3 ? inside : points.slice(first, first + 3))
    })

  // A window of 0.0101 s often holds fewer than three samples, and the longest more than there are.
  test.each([0.0101, 0.03, 0.1, 0.28, 0.31, 2])('over a window of %s s is the line through those in it', (windowS) => {
    const random = createRandom(8)
    for (const samples of [3, 4, 57]) {
      const timeS = new Float64Array(samples)
      for (let i = 1; i < samples; i++) timeS[i] = timeS[i - 1]! + random.between(0.001, 0.007)
      const values = timeS.map(() => 10 * random.normal())
      const points = [...timeS].map((t, i): [number, number] => [t, values[i]!])
      const { force: slope } = slopeOfCurve({ timeS, force: values }, windowS, [
        { from: 0, to: samples, intervalS: 0.005, jitter: 0 },
      ])
      const wanted = plainly(points, windowS)
      for (const [i, value] of wanted.entries()) expect(slope[i]! / value).toBeCloseTo(1, 6)
    }
  })

  test('counts samples on the border of the window, and none half a thousandth of the interval beyond it', () => {
    const values = Float64Array.of(0, 0, 0, 1, 1, 0, 0, 0)
    const at = (beyond: number) => {
      const timeS = Float64Array.of(0, 0.25, 0.5, 0.75, 1, 1.25 + beyond, 1.5 + beyond, 1.75 + beyond)
      return slopeOfCurve({ timeS, force: values }, 1, [{ from: 0, to: 8, intervalS: 0.25, jitter: 0 }]).force[3]!
    }
    // Through five samples the slope is (Σ t f) / Σ t² = 0.25 / 0.625 at the fourth; through four (0.25 · 0.5 + ...) it is more.
    expect(at(0)).toBeCloseTo(0.25 / 0.625, 9)
    expect(at(0.0005 * 0.25)).toBeCloseTo(
      lineSlope([
        [0.25, 0],
        [0.5, 0],
        [0.75, 1],
        [1, 1],
      ]),
      6,
    )
  })
})
