import { expect, it } from 'vitest'
import {
  comparedAbout,
  comparedAxes,
  comparedCurvesWords,
  comparedTitle,
} from '#words/breaks/compare/comparedFigureWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

it('calls the figure by how many curves it has and by their group', () => {
  expect(comparedTitle(12, 'all of casein C1')).toBe('12 load curves over each other: all of casein C1')
  expect(comparedTitle(1, null)).toBe('Load curve')
})

it.each([
  ['onset', 'N', 's', 'time from the start of loading, s', 'load, lbf'],
  ['peak', 'counts', 's', 'time from the peak, s', 'reading, counts'],
  ['break', '%', '%', 'time from the break, % of the time to peak', 'load, % of the curve’s own peak'],
] as const)('says what the axes are: aligned at %s, in %s over %s', (alignAt, unit, timeUnit, x, y) =>
  expect(comparedAxes({ alignAt, unit, timeUnit }, quantitiesIn('US').force)).toEqual({ x, y }),
)

it('tells what is shown to those who do not see it', () => {
  expect(
    comparedCurvesWords({ names: ['A', 'B'], aside: ['B'], outlying: ['A: 540 N below the median'], withMedian: true }),
  ).toBe(
    'Curves of A, B. Their median and quartiles are drawn over them. Set aside: B. Outlying: A: 540 N below the median.',
  )
  expect(comparedCurvesWords({ names: ['A'], aside: [], outlying: [], withMedian: false })).toBe('Curves of A.')
})

it('names the breaks that a figure rests on', () => {
  expect(comparedAbout([4, 5])).toBe('Breaks 4, 5.')
  expect(comparedAbout([4])).toBe('Break 4.')
})
