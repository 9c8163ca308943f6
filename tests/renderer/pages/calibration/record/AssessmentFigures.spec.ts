import { expect, it } from 'vitest'
import { limitsInView } from '#renderer/pages/calibration/record/AssessmentFigures.tsx'

it('draws the limits up to the first class that holds every error', () => {
  expect(limitsInView([0.2, -0.7]).map(({ y }) => y)).toEqual([0, 0.5, -0.5, 1, -1])
  expect(limitsInView([]).map(({ y }) => y)).toEqual([0, 0.5, -0.5])
})

it('draws them all where an error lies outside every class', () => {
  expect(limitsInView([4]).map(({ y }) => y)).toEqual([0, 0.5, -0.5, 1, -1, 2, -2, 3, -3])
})
