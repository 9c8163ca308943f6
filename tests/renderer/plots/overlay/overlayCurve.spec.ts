import { describe, expect, it } from 'vitest'
import { buildLevels } from '#renderer/plots/minMaxLevels.ts'
import { curveExtent, liesElsewhere, valueAt } from '#renderer/plots/overlay/overlayCurve.ts'

const curve = {
  key: 1,
  label: 'C1-LL-01',
  levels: buildLevels(Float64Array.of(10, 12, 14), Float64Array.of(0, 400, 200)),
  samples: 3,
  originS: 10,
  timeUnit: 0.04,
  forceUnit: 4,
  setAside: false,
  outlying: null,
}

describe('a curve on axes of its own', () => {
  it('lies from its first to its last sample, in units of the axis', () =>
    expect(curveExtent(curve)).toEqual({ from: 0, to: 100 }))
  it('has no place without samples', () =>
    expect(curveExtent({ ...curve, levels: buildLevels(Float64Array.of(), Float64Array.of()) })).toBeNull())
  it('is read by the straight line between its samples', () =>
    expect([0, 25, 50, 75, 100].map((at) => valueAt(curve, at))).toEqual([0, 50, 100, 75, 50]))
  it('is not there beyond its ends', () => expect([-1, 101].map((at) => valueAt(curve, at))).toEqual([null, null]))
})

it('lies elsewhere once any of its axes is another', () => {
  expect(liesElsewhere({ ...curve, setAside: true }, curve)).toBe(false)
  for (const moved of [{ originS: 9 }, { timeUnit: 1 }, { forceUnit: 1 }])
    expect(liesElsewhere({ ...curve, ...moved }, curve)).toBe(true)
})
