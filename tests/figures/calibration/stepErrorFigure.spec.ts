import { describe, expect, it } from 'vitest'
import { limitsInView, stepErrorFigure } from '#figures/calibration/stepErrorFigure.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

describe('limitsInView', () => {
  it('draws the limits up to the first class that holds every error', () => {
    expect(limitsInView([0.2, -0.7]).map(({ y }) => y)).toEqual([0, 0.5, -0.5, 1, -1])
    expect(limitsInView([]).map(({ y }) => y)).toEqual([0, 0.5, -0.5])
  })
  it('draws them all where an error lies outside every class', () => {
    expect(limitsInView([4]).map(({ y }) => y)).toEqual([0, 0.5, -0.5, 1, -1, 2, -2, 3, -3])
  })
})

it('leaves out steps that have no error', () => {
  const steps = [
    { forceN: 100, q: 0.3 },
    { forceN: 200, q: null },
  ]
  const { readings } = stepErrorFigure(steps, quantitiesIn('SI').force, { widthPx: 400, emPx: 12 })
  expect(readings.map(({ words }) => words)).toEqual(['100.00\u00a0N: +0.30 %'])
})
