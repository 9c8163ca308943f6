import { expect, it } from 'vitest'
import { medianMarks } from '#figures/breaks/medianMarks.ts'

const none = Number.NaN
const lines = {
  grid: Float64Array.of(0, 1, 2, 3, 4),
  median: Float64Array.of(10, 20, none, 40, 50),
  lower: Float64Array.of(9, 18, none, 36, 45),
  upper: Float64Array.of(11, 22, none, 44, 55),
}

it('draws median and quartiles in stretches, with nothing where there is no median', () => {
  const marks = medianMarks(lines, (place) => place)
  const through = (ink: string) =>
    marks.flatMap((mark) => (mark.kind === 'line' && mark.ink === ink ? [mark.through] : []))
  expect(through('mean')).toEqual([
    [
      { x: 0, y: 10 },
      { x: 1, y: 20 },
    ],
    [
      { x: 3, y: 40 },
      { x: 4, y: 50 },
    ],
  ])
  expect(through('quartile')).toHaveLength(4)
})
it('shades between the quartiles and back', () => {
  const [band] = medianMarks(lines, (place) => place)
  expect(band).toEqual({ kind: 'path', ink: 'band', d: 'M0.00 11.00L1.00 22.00L1.00 18.00L0.00 9.00Z' })
})
it('draws nothing without a median', () =>
  expect(medianMarks({ ...lines, median: new Float64Array(5).fill(none) }, (place) => place)).toEqual([]))
