import { describe, expect, it } from 'vitest'
import { type Residual, residualFigure } from '#figures/calibration/residualFigure.ts'
import type { Figure } from '#figures/drawing/figure.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { force } = quantitiesIn('SI')
const size = { widthPx: 500, emPx: 12 }
const residual = (change: Partial<Residual> = {}): Residual => ({
  ...{ forceN: 100, run: 1, direction: 'up', number: 1, residualN: 0.1 },
  ...change,
})
const draw = (residuals: Residual[], soFar = false) => residualFigure({ residuals, soFar }, force, size)
const texts = ({ marks }: Figure) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
const shapes = ({ marks }: Figure) =>
  marks.flatMap((mark) => (mark.kind === 'named' ? mark.marks.map((one) => (one.kind === 'path' ? one.ink : '')) : []))

describe('residualFigure', () => {
  it('tells going down from going up by hollow points, and says so below', () => {
    const figure = draw([residual(), residual({ direction: 'down', number: 2 })])
    expect(shapes(figure)).toEqual(['point', 'hollow'])
    expect(texts(figure)).toContain('filled: going up, hollow: going down')
  })
  it('says nothing of going down where only zero was read on the way down', () => {
    expect(texts(draw([residual({ direction: 'down', forceN: 0 })])).join()).not.toContain('hollow')
  })
  it('names one shape for each run, and the shapes come round again after the fourth', () => {
    expect(texts(draw([residual(), residual({ run: 3 })]))).toEqual(expect.arrayContaining(['run 1', 'run 2', 'run 3']))
    expect(texts(draw([residual({ run: 6 })]))).toEqual(expect.arrayContaining(['runs 1, 5, …', 'runs 4, 8, …']))
  })
  it('is lower while the routine is under way, and says so', () => {
    expect(draw([residual()], true).heightPx).toBeLessThan(draw([residual()]).heightPx)
    expect(draw([residual()], true).title).toContain('so far')
  })
  it('names both axes with their unit', () => {
    const inPounds = residualFigure({ residuals: [residual()], soFar: true }, quantitiesIn('US').force, size)
    expect(texts(inPounds)).toEqual(expect.arrayContaining(['force, lbf', 'residual of the readings so far, lbf']))
  })
})
