import { expect, it } from 'vitest'
import { drawnMedian } from '#renderer/plots/overlay/overlayMedian.ts'

it('cuts median and quartiles where too few curves reach', () => {
  const nan = Number.NaN
  const grid = Float64Array.of(0, 1, 2, 3, 4, 5)
  const median = Float64Array.of(nan, 10, 20, nan, 40, nan)
  const { median: stretches, lower } = drawnMedian({
    grid,
    median,
    lower: median.map((y) => y - 1),
    upper: median,
    curvesAt: grid,
  })
  expect(stretches.map(({ timeS, force }) => [[...timeS], [...force]])).toEqual([
    [
      [1, 2],
      [10, 20],
    ],
    [[4], [40]],
  ])
  expect(lower[0]?.force).toEqual(Float64Array.of(9, 19))
})
