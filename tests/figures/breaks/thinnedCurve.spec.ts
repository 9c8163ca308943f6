import { describe, expect, it } from 'vitest'
import { stretchesBetween, thinnedCurve } from '#figures/breaks/thinnedCurve.ts'

const curveOf = (samples: number, forceAt: (index: number) => number) => ({
  timeS: Float64Array.from({ length: samples }, (_, index) => index / 1000),
  force: Float64Array.from({ length: samples }, (_, index) => forceAt(index)),
})

describe('stretchesBetween', () => {
  const curve = curveOf(10, (index) => index)
  it('parts a curve where samples are missing, and keeps every sample', () => {
    const stretches = stretchesBetween(curve, [
      { fromS: 0.002, toS: 0.003 },
      { fromS: 0.006, toS: 0.007 },
    ])
    expect(stretches.map(({ force }) => [...force])).toEqual([
      [0, 1, 2],
      [3, 4, 5, 6],
      [7, 8, 9],
    ])
  })
  it('is the curve itself without gaps, and nothing without samples', () => {
    expect(stretchesBetween(curve, [])).toEqual([curve])
    expect(
      stretchesBetween(
        curveOf(0, () => 0),
        [],
      ),
    ).toEqual([])
  })
})

describe('thinnedCurve', () => {
  it('loses neither the highest nor the lowest sample of a long curve', () => {
    const curve = curveOf(200_000, (index) => (index === 123_457 ? 9 : index === 77_777 ? -9 : Math.sin(index)))
    const [thin] = thinnedCurve(curve, [], 400)
    expect(thin!.force.length).toBeLessThanOrEqual(800)
    expect([Math.min(...thin!.force), Math.max(...thin!.force)]).toEqual([-9, 9])
  })
  it('gives short stretches beside long ones enough points to keep their peak', () => {
    const curve = curveOf(10_000, (index) => (index === 4 ? 9 : 0))
    const [short] = thinnedCurve(curve, [{ fromS: 0.009, toS: 0.01 }], 100)
    expect(Math.max(...short!.force)).toBe(9)
  })
})
