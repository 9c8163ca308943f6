import { describe, expect, it } from 'vitest'
import { esdOutliers, grubbsOutlier } from '#domain/findings/outliers.ts'
import { normalQuantile } from '#domain/numbers/distributions/normal.ts'
import { seededNumbers } from '#tests/fakes/scripted/scriptedCurve.ts'

// Tietjen and Moore (1972), NIST/SEMATECH e-Handbook 1.3.5.17.1.
const masses = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]
// Rosner (1983), NIST/SEMATECH e-Handbook 1.3.5.17.3 (values from memory; the statistics printed there agree).
const rosner = [
  -0.25, 0.68, 0.94, 1.15, 1.2, 1.26, 1.26, 1.34, 1.38, 1.43, 1.49, 1.49, 1.55, 1.56, 1.58, 1.65, 1.69, 1.7, 1.76, 1.77,
  1.81, 1.91, 1.94, 1.96, 1.99, 2.06, 2.09, 2.1, 2.14, 2.15, 2.23, 2.24, 2.26, 2.35, 2.37, 2.4, 2.47, 2.54, 2.62, 2.64,
  2.9, 2.92, 2.92, 2.93, 3.21, 3.26, 3.3, 3.59, 3.68, 4.3, 4.64, 5.34, 5.42, 6.01,
]

describe('Grubbs', () => {
  it('points at the last mass of the handbook, two-sided', () => {
    const found = grubbsOutlier(masses, 0.05)!
    expect(found.index).toBe(7)
    expect(found.statistic).toBeCloseTo(2.468764611, 8)
    expect(found.critical).toBeCloseTo(2.126645, 6)
    expect(found.p).toBeLessThan(0.001)
  })

  it('has the p of its own critical value: alpha', () => {
    // Two-sided 5 % critical value of 10 values, ASTM E178 and NIST: 2.28995.
    const found = grubbsOutlier([...Array.from({ length: 9 }, (_, i) => (i - 4) / 2), 6.05], 0.05)
    expect(found?.critical).toBeCloseTo(2.28995, 5)
    expect(found!.p! < 0.05).toBe(found!.statistic > found!.critical)
  })

  it('points at nothing where nothing lies far out, all are equal, or there are two', () => {
    expect(grubbsOutlier([1, 2, 3, 4, 5], 0.05)).toBeNull()
    expect(grubbsOutlier([3, 3, 3], 0.05)).toBeNull()
    expect(grubbsOutlier([1, 100], 0.05)).toBeNull()
  })
})

describe('generalised ESD', () => {
  it('points at the three of Rosner, though the first two alone lie below their limits', () => {
    const found = esdOutliers(rosner, 0.05)
    expect(found.map(({ index }) => rosner[index])).toEqual([6.01, 5.42, 5.34])
    // As the handbook prints them.
    for (const [i, [statistic, critical]] of (
      [
        [3.118, 3.158],
        [2.942, 3.151],
        [3.179, 3.143],
      ] as const
    ).entries()) {
      expect(found[i]!.statistic).toBeCloseTo(statistic, 2)
      expect(found[i]!.critical).toBeCloseTo(critical, 2)
    }
    expect(found[0]!.p).toBeNull()
  })

  it('does not take rounding for an outlier where three values are left', () => {
    expect(esdOutliers([5, 5.1, 5.2, 5, 5], 0.05)).toEqual([])
    expect(esdOutliers([5, 5, 5.1], 0.05)).toEqual([])
  })

  it('of fewer than fifteen tries the farthest alone, and so names one in about 5 % of quiet groups of twelve', () => {
    const random = seededNumbers(12)
    const groups = Array.from({ length: 2000 }, () => Array.from({ length: 12 }, () => normalQuantile(random())))
    const named = groups.map((group) => esdOutliers(group, 0.05).map(({ index }) => index))
    expect(Math.max(...named.map(({ length }) => length))).toBe(1)
    expect(named).toEqual(
      groups.map((group) => [grubbsOutlier(group, 0.05)?.index].filter((index) => index !== undefined)),
    )
    const share = named.filter(({ length }) => length > 0).length / groups.length
    expect(Math.abs(share - 0.05)).toBeLessThan(0.015)
  })

  it('points at nothing in quiet values, and takes no candidates from two', () => {
    expect(esdOutliers([1, 2, 3, 4, 5, 6], 0.05)).toEqual([])
    expect(esdOutliers([1, 9], 0.05)).toEqual([])
    expect(esdOutliers([2, 2, 2, 2], 0.05)).toEqual([])
  })
})
