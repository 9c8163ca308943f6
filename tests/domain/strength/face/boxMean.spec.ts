import { expect, it } from 'vitest'
import { boxMean } from '#domain/strength/face/boxMean.ts'

const plane = {
  width: 5,
  height: 4,
  values: Float32Array.of(3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8, 9, 7, 9, 3, 2, 3, 8, 4),
}

// scipy 1: ndimage.uniform_filter(a, 3, mode='nearest'), and with 5 its first row.
const three = [
  3.777777777777778, 3.6666666666666665, 2.777777777777778, 3.777777777777778, 3.6666666666666665, 5.0,
  5.222222222222222, 4.777777777777778, 5.444444444444444, 5.222222222222222, 5.111111111111112, 5.222222222222222,
  5.555555555555556, 6.0, 5.777777777777778, 3.7777777777777772, 4.222222222222222, 5.5555555555555545,
  6.111111111111111, 6.333333333333333,
]
const five = [4.36, 4.04, 4.2, 4.36, 4.92]

it('is the uniform filter of scipy, edges repeated outwards', () => {
  boxMean(plane, 1).values.forEach((value, i) => {
    expect(value).toBeCloseTo(three[i]!, 5)
  })
  boxMean(plane, 2)
    .values.slice(0, 5)
    .forEach((value, i) => {
      expect(value).toBeCloseTo(five[i]!, 5)
    })
})

it('leaves a plane as it is with no neighbours', () => {
  expect(boxMean(plane, 0).values).toEqual(plane.values)
})
