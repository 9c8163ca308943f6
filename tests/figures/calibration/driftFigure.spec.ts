import { expect, it } from 'vitest'
import { driftFigure } from '#figures/calibration/driftFigure.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const series = [
  { name: 'Spring 2031', madeAt: '2031-04-01T12:00:00.000Z', slopePercent: 0, zeroN: 0 },
  { name: 'Spring 2032', madeAt: '2032-04-01T12:00:00.000Z', slopePercent: 0.12, zeroN: 4.4482216152605 },
]
const size = { widthPx: 500, emPx: 12 }
const words = (what: 'slope' | 'zero', system: 'SI' | 'US') =>
  driftFigure(series, what, quantitiesIn(system).force, size).readings.map((reading) => reading.words)

it('tells the slope in percent and the zero in the chosen unit, each with the day and the name', () => {
  expect(words('slope', 'US')[1]).toBe('1 Apr 2032, Spring 2032: 0.120 %')
  expect(words('zero', 'US')[1]).toBe('1 Apr 2032, Spring 2032: 1.00 lbf')
  expect(words('zero', 'SI')[1]).toBe('1 Apr 2032, Spring 2032: 4.45 N')
})

it('says in its description how far the newest is from the first', () => {
  expect(driftFigure(series, 'slope', quantitiesIn('SI').force, size).description).toContain('0.120 %')
})
