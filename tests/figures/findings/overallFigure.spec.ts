import { describe, expect, it } from 'vitest'
import { overallFigure } from '#figures/findings/overallFigure.ts'

const size = { widthPx: 600, emPx: 12 }
const of = (adhesive: string, ratio: number | null, low: number | null, high: number | null) => ({
  ...{ adhesive, ratio, low, high, missing: [] },
})

describe('overallFigure', () => {
  it('stands every adhesive at its share of the reference, and leaves out one without a ratio', () => {
    const { readings, marks } = overallFigure(
      [of('A', 1.2, 1.1, 1.3), of('B', 1, 0.9, 1.1), of('C', null, null, null)],
      'R2',
      size,
    )
    expect(readings.map(({ words }) => words.slice(0, 1))).toEqual(['A', 'B'])
    const reference = marks.find((mark) => mark.kind === 'rule' && mark.ink === 'zero')
    expect(reference).toMatchObject({ from: { x: expect.closeTo(readings[1]!.x) } })
  })
  it('fills only what differs from the reference', () => {
    const { marks } = overallFigure(
      [of('A', 1.2, 1.1, 1.3), of('B', 1.2, 0.9, 1.5), of('D', 1.3, null, null)],
      'R2',
      size,
    )
    const inks = marks.flatMap((mark) =>
      mark.kind === 'named' ? mark.marks.flatMap((one) => (one.kind === 'path' ? [one.ink] : [])) : [],
    )
    expect(inks).toEqual(['point', 'hollow', 'hollow'])
  })
  it('stands without an adhesive', () => {
    expect(overallFigure([], 'R2', size).description).toBe('No adhesive has a condition in common with R2.')
  })
})
