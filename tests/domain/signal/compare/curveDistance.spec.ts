import { expect, test } from 'vitest'
import { curveDistance } from '#domain/signal/compare/curveDistance.ts'

const grid = Float64Array.of(-2, -1, 0, 1, 2)
const medianCurve = Float64Array.of(1.5, 2, 1, 4, Number.NaN)

test('is the root mean square over the places where both are known', () => {
  // numpy 2.4.6: d = [1, 2, 3, 9] - [1.5, 2, 1, 4]; numpy.sqrt(numpy.mean(d ** 2))
  const distance = curveDistance(Float64Array.of(1, 2, 3, 9, 5.5), medianCurve, grid)
  expect(distance?.rootMeanSquare).toBeCloseTo(2.704163456597992, 12)
  expect(distance?.farthest).toEqual({ at: 1, difference: 5 })
})

test('says on which side it lies farthest', () => {
  const distance = curveDistance(Float64Array.of(-20, 2, 3, 9, 5.5), medianCurve, grid)
  expect(distance?.farthest).toEqual({ at: -2, difference: -21.5 })
})

test('there is none where they have no place in common', () => {
  const none = Number.NaN
  expect(curveDistance(Float64Array.of(none, none, none, none, 3), medianCurve, grid)).toBeNull()
})

test('lies farthest at the first of several places, and at the first of all where it lies nowhere apart', () => {
  const distance = curveDistance(Float64Array.of(1.5, 5, 1, 7, 0), medianCurve, grid)
  expect(distance?.farthest).toEqual({ at: -1, difference: 3 })
  expect(curveDistance(medianCurve, medianCurve, grid)).toEqual({
    rootMeanSquare: 0,
    farthest: { at: -2, difference: 0 },
  })
})
