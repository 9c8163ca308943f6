import { describe, expect, test } from 'vitest'
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
