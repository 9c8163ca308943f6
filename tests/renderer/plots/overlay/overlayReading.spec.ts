import { expect, it } from 'vitest'
import { buildLevels } from '#renderer/plots/minMaxLevels.ts'
import { readingAt } from '#renderer/plots/overlay/overlayReading.ts'

const curve = {
  key: 1,
  label: 'C1-LL-01',
  levels: buildLevels(Float64Array.of(10, 14), Float64Array.of(0, 400)),
  samples: 2,
  originS: 10,
  timeUnit: 1,
  forceUnit: 1,
  setAside: false,
  outlying: null,
}
const nan = Number.NaN
const line = Float64Array.of(100, 200, 300, nan)
const median = {
  grid: Float64Array.of(0, 1, 2, 3),
  median: line,
  lower: line,
  upper: line,
  curvesAt: Float64Array.of(9, 9, 7, 2),
}

it('reads the curve that stands out, and the median with the number of curves it is one of', () => {
  expect(readingAt(curve, median, 1)).toEqual({ at: 1, force: 100, median: { value: 200, of: 9 } })
  expect(readingAt(curve, median, 1.5)).toEqual({ at: 1.5, force: 150, median: { value: 250, of: 9 } })
  expect(readingAt(curve, median, 2)).toEqual({ at: 2, force: 200, median: { value: 300, of: 7 } })
})

it('has no median where too few curves are left, nor a curve beyond its end or where none stands out', () => {
  expect(readingAt(curve, median, 2.5)).toEqual({ at: 2.5, force: 250, median: null })
  expect(readingAt(null, null, 2.5)).toEqual({ at: 2.5, force: null, median: null })
  expect(readingAt(curve, median, -1)).toEqual({ at: -1, force: null, median: null })
})
