import { describe, expect, it } from 'vitest'
import { type FaceCorners, homographyOf, isConvex, projected } from '#domain/strength/face/homography.ts'

const corners: FaceCorners = [
  { x: 100, y: 80 },
  { x: 530, y: 120 },
  { x: 560, y: 430 },
  { x: 60, y: 400 },
]

describe('the homography of four corners', () => {
  // OpenCV 5.0: cv2.getPerspectiveTransform([[0,0],[480,0],[480,360],[0,360]], [[100,80],[530,120],[560,430],[60,400]])
  const expected = [
    0.9467066839714471, -0.13490518422380848, 100.0, 0.09485182781743456, 0.7302617348042397, 80.0,
    9.598745403417694e-5, -0.00039656788521162304, 1.0,
  ]

  it('is the matrix that OpenCV finds', () => {
    homographyOf(corners, 480, 360).forEach((value, i) => {
      expect(value).toBeCloseTo(expected[i]!, 12)
    })
  })

  it('puts places where OpenCV puts them', () => {
    // cv2.perspectiveTransform of (240, 180) and (100, 300) by the same matrix.
    const map = homographyOf(corners, 480, 360)
    const [middle, other] = [projected(map, 240, 180), projected(map, 100, 300)]
    expect(middle.x).toBeCloseTo(318.3157176951927, 9)
    expect(middle.y).toBeCloseTo(246.10978520286397, 9)
    expect(other.x).toBeCloseTo(173.13518928929233, 9)
    expect(other.y).toBeCloseTo(346.456176568809, 9)
  })

  it('refuses corners with a dent or a crossing', () => {
    const [a, b, c, d] = corners
    expect(() => homographyOf([a, c, b, d], 480, 360)).toThrow(RangeError)
    expect(() => homographyOf([a, b, { x: 120, y: 110 }, d], 480, 360)).toThrow(RangeError)
    expect(() => homographyOf([a, a, c, d], 480, 360)).toThrow(RangeError)
  })

  it('refuses a rectangle without a side', () => {
    expect(() => homographyOf(corners, 0, 360)).toThrow(RangeError)
  })
})

it('takes a field without dents in either sense of turning', () => {
  const [a, b, c, d] = corners
  expect(isConvex([a, b, c, d])).toBe(true)
  expect(isConvex([d, c, b, a])).toBe(true)
  expect(isConvex([a, c, b, d])).toBe(false)
})
